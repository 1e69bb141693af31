import { expect, it } from 'vitest';
import { equalLoudness, type StruckSound } from '../../../src/screens/hearing/equalLoudness.ts';

const RATE_HZ = 8000;

/** A sine from the strike on, after so much silence; it fades by 60 dB in the time given. */
function struck(size: number, leadS: number, durationS: number, sampleRateHz = RATE_HZ, decayTimeS = 1e9): StruckSound {
  const onsetIndex = Math.round(leadS * sampleRateHz);
  const samples = new Float32Array(onsetIndex + Math.round(durationS * sampleRateHz));
  for (let index = onsetIndex; index < samples.length; index += 1)
    samples[index] =
      size *
      10 ** ((-3 * (index - onsetIndex)) / (decayTimeS * sampleRateHz)) *
      Math.sin((2 * Math.PI * 100 * (index - onsetIndex)) / sampleRateHz);
  return { samples, sampleRateHz, onsetIndex };
}

function firstSecondEnergy({ samples, sampleRateHz, onsetIndex }: StruckSound): number {
  return (
    samples.slice(onsetIndex, onsetIndex + sampleRateHz).reduce((sum, sample) => sum + sample ** 2, 0) / sampleRateHz
  );
}

it.each([
  ['at two rates', struck(0.02, 0.3, 3), struck(0.7, 0.02, 3, 16_000)],
  ['where one goes on for longer', struck(0.5, 0.1, 2), struck(0.01, 0.1, 12)],
])('gives two sounds equal energy in the first second after the strike, %s', (_, one, other) => {
  const [first, second] = equalLoudness(one, other)!;
  expect(firstSecondEnergy(first) / firstSecondEnergy(second)).toBeCloseTo(1, 5);
  expect(first.gainDb - second.gainDb).toBeCloseTo(20 * Math.log10(maximum(other) / maximum(one)), 1);
});

it('goes by the first second alone, however long either lives', () => {
  const [first, second] = equalLoudness(struck(0.3, 0.1, 6, RATE_HZ, 3), struck(0.3, 0.1, 6, RATE_HZ, 60))!;
  expect(firstSecondEnergy(first) / firstSecondEnergy(second)).toBeCloseTo(1, 5);
});

it('lets the louder peak reach nine tenths of full scale and clips nothing', () => {
  const leveled = equalLoudness(struck(0.02, 0.3, 3), struck(1.5, 0.1, 3))!;
  expect(Math.max(...leveled.map(({ samples }) => maximum({ samples })))).toBeCloseTo(0.9, 3);
});

it('compares what both have where one is shorter than a second', () => {
  const [first, second] = equalLoudness(struck(0.1, 0.1, 0.4), struck(0.4, 0.1, 3))!;
  expect(first.gainDb - second.gainDb).toBeCloseTo(20 * Math.log10(4), 2);
});

it('keeps a tenth of a second before the strike and at most eight seconds after it', () => {
  const [first] = equalLoudness(struck(0.2, 1, 20), struck(0.2, 0.1, 3))!;
  expect(first.onsetIndex).toBe(0.1 * RATE_HZ);
  expect(first.samples).toHaveLength(8.1 * RATE_HZ);
});

it('says so where one of them is silent', () => {
  expect(equalLoudness(struck(0, 0.1, 2), struck(0.3, 0.1, 2))).toBeNull();
});

function maximum({ samples }: Pick<StruckSound, 'samples'>): number {
  return samples.reduce((peak, sample) => Math.max(peak, Math.abs(sample)), 0);
}
