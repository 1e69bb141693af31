import { expect, it } from 'vitest';
import { createLevelMeter } from '../../src/workers/levelMeter.ts';

const SAMPLE_RATE_HZ = 48000;
const sine = (amplitude: number) =>
  Float32Array.from(
    { length: SAMPLE_RATE_HZ },
    (_, i) => amplitude * Math.sin((2 * Math.PI * 1000 * i) / SAMPLE_RATE_HZ),
  );

it('gives ten levels a second, however the sound is cut into blocks', () => {
  const whole = createLevelMeter(SAMPLE_RATE_HZ).push(sine(0.5));
  const meter = createLevelMeter(SAMPLE_RATE_HZ);
  const inBlocks = Array.from({ length: 48 }, (_, i) =>
    meter.push(sine(0.5).subarray(i * 1000, (i + 1) * 1000)),
  ).flat();
  expect(whole).toHaveLength(10);
  expect(inBlocks).toEqual(whole);
});

it('reads a sine of half full scale as -6.02 dBFS, by peak and by root mean square', () => {
  const [level] = createLevelMeter(SAMPLE_RATE_HZ).push(sine(0.5));
  expect(level?.peakDbfs).toBeCloseTo(20 * Math.log10(0.5), 4);
  expect(level?.rmsDbfs).toBeCloseTo(20 * Math.log10(0.5), 4);
  expect(level?.isClipped).toBe(false);
});

it('reads digital silence as minus infinity', () => {
  const [level] = createLevelMeter(SAMPLE_RATE_HZ).push(new Float32Array(4800));
  expect(level).toEqual({ peakDbfs: -Infinity, rmsDbfs: -Infinity, isClipped: false });
});

it.each([1, -1, 32767 / 32768])('calls %f clipped', (stop) => {
  const samples = sine(0.5);
  samples[100] = stop;
  const levels = createLevelMeter(SAMPLE_RATE_HZ).push(samples);
  expect(levels.map((level) => level.isClipped)).toEqual([true, ...Array.from({ length: 9 }, () => false)]);
});
