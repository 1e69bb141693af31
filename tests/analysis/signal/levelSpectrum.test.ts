import { expect, it } from 'vitest';
import { levelSpectrum } from '../../../src/analysis/signal/levelSpectrum.ts';
import { partialEnvelope, partialLevels } from '../../../src/analysis/signal/partialEnvelope.ts';

const RATE_HZ = 22_050;
const tone = (hz: number, amplitude: number, dampingPerS = 0) =>
  Float32Array.from(
    { length: RATE_HZ },
    (_, index) =>
      amplitude * Math.exp((-dampingPerS * index) / RATE_HZ) * Math.sin((2 * Math.PI * hz * index) / RATE_HZ),
  );
const REQUEST = { startIndex: 0, durationS: 0.8, highestHz: 4000, pointCount: 400 };

it('shows a steady tone at its frequency and level, and next to nothing elsewhere', () => {
  const line = levelSpectrum(tone(1000, 0.1), RATE_HZ, REQUEST);
  const peak = line.reduce((best, point) => (point.levelDb > best.levelDb ? point : best));
  expect(Math.abs(peak.frequencyHz - 1000)).toBeLessThan(1);
  // The bin nearest to the tone lies up to half a bin off: this window loses less than 0.9 dB there (Harris 1978, table 1).
  expect(Math.abs(peak.levelDb + 20)).toBeLessThan(0.9);
  const elsewhere = line.filter(({ frequencyHz }) => Math.abs(frequencyHz - 1000) > 50);
  expect(Math.max(...elsewhere.map(({ levelDb }) => levelDb))).toBeLessThan(-100);
});

it('has nothing to show where the sound has ended', () => {
  expect(levelSpectrum(tone(1000, 0.1), RATE_HZ, { ...REQUEST, startIndex: RATE_HZ })).toEqual([]);
});

it('gives a partial’s level relative to full scale, falling as the tone does', () => {
  const sound = { samples: tone(500, 0.2, 3), sampleRateHz: RATE_HZ, onsetIndex: 0 };
  const levels = partialLevels(sound, { centreHz: 500, spacingHz: 250 });
  expect(levels.length).toBeGreaterThan(10);
  for (const { timeS, levelDb } of levels) {
    const truthDb = 20 * Math.log10(0.2 * Math.exp(-3 * timeS));
    expect(Math.abs(levelDb - truthDb)).toBeLessThan(0.05);
  }
  const relative = partialEnvelope(sound, { centreHz: 500, spacingHz: 250 });
  expect(relative).toHaveLength(levels.length);
  expect(relative[0]?.levelDb).toBe(0);
});
