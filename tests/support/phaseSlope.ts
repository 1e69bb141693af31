/** A frequency by a way of its own, independent of the project's analysis. */

const BLOCKS_PER_S = 20;

/**
 * Frequency of the sinusoid in `samples` near a guess (within 10 Hz): the mean step of its phase from block to block of 50 ms.
 * Other sinusoids leak in a little, the more the nearer they are.
 */
export function phaseSlopeHz(samples: Float32Array, sampleRateHz: number, nearHz: number): number {
  const block = Math.round(sampleRateHz / BLOCKS_PER_S);
  const phases = Array.from({ length: Math.floor(samples.length / block) }, (_, row) => {
    let [re, im] = [0, 0];
    for (let index = row * block; index < (row + 1) * block; index += 1) {
      const angle = (2 * Math.PI * nearHz * index) / sampleRateHz;
      re += samples[index]! * Math.cos(angle);
      im -= samples[index]! * Math.sin(angle);
    }
    return Math.atan2(im, re);
  });
  const turns = phases.slice(1).map((phase, row) => {
    const turn = (phase - phases[row]!) / (2 * Math.PI);
    return turn - Math.round(turn);
  });
  return nearHz + (turns.reduce((sum, turn) => sum + turn, 0) / turns.length) * (sampleRateHz / block);
}
