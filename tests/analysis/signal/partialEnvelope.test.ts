import { expect, it } from 'vitest';
import { partialEnvelope } from '../../../src/analysis/signal/partialEnvelope.ts';

const RATE_HZ = 16_000;
const ONSET_INDEX = 1600;
/** The envelope has a value at least every fiftieth of a second. */
const GRID_S = 0.02;

type Component = { readonly hz: number; readonly size: number; readonly decayTimeS: number };

function sound(components: readonly Component[], durationS = 4) {
  const samples = new Float32Array(ONSET_INDEX + durationS * RATE_HZ);
  for (const { hz, size, decayTimeS } of components)
    for (let index = ONSET_INDEX; index < samples.length; index += 1) {
      const timeS = (index - ONSET_INDEX) / RATE_HZ;
      samples[index]! += size * Math.exp((-Math.log(1000) * timeS) / decayTimeS) * Math.sin(2 * Math.PI * hz * timeS);
    }
  return { samples, sampleRateHz: RATE_HZ, onsetIndex: ONSET_INDEX };
}

const REQUEST = { centreHz: 440, spacingHz: 440 };

it('shows the beats of two strings two hertz apart as dips half a second apart, at the right times', () => {
  const components = [
    { hz: 440, size: 0.3, decayTimeS: 1e6 },
    { hz: 442, size: 0.2, decayTimeS: 1e6 },
    { hz: 880, size: 0.9, decayTimeS: 60 },
  ];
  const envelope = partialEnvelope(sound(components), REQUEST);
  const dips = envelope.filter(
    ({ levelDb }, index) =>
      levelDb < -10 && levelDb < (envelope[index - 1]?.levelDb ?? 0) && levelDb < (envelope[index + 1]?.levelDb ?? 0),
  );
  // The two stand against each other at 0.25 s after the strike, which is at 0.1 s, and every half second from there.
  expect(dips).toHaveLength(8);
  for (const [index, { timeS }] of dips.entries()) expect(Math.abs(timeS - (0.35 + index / 2))).toBeLessThan(GRID_S);
  // (0.3 + 0.2)/(0.3 − 0.2) is 14 dB from peak to trough; the smoothing takes a little off.
  for (const { levelDb } of dips) expect(Math.abs(levelDb + 14)).toBeLessThan(0.5);
});

it('falls by 60 dB in the decay time of a single string, and by none of its neighbour', () => {
  const envelope = partialEnvelope(
    sound([
      { hz: 440, size: 0.1, decayTimeS: 6 },
      { hz: 880, size: 0.9, decayTimeS: 60 },
    ]),
    REQUEST,
  );
  const at = (timeS: number) => envelope.find((point) => point.timeS >= timeS)?.levelDb ?? 0;
  expect(at(3) - at(1)).toBeCloseTo(-20, 0);
});

it('is empty for silence and for a sound too short to say anything', () => {
  expect(partialEnvelope(sound([]), REQUEST)).toEqual([]);
  expect(partialEnvelope(sound([{ hz: 440, size: 1, decayTimeS: 1 }], 0.003), REQUEST)).toEqual([]);
});
