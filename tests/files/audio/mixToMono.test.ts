import { expect, it } from 'vitest';
import { mixToMono, mixWarnings } from '../../../src/files/audio/mixToMono.ts';

it('mixToMono takes the mean of the channels and silence after the end of the shorter one', () => {
  const mixed = mixToMono([Float32Array.of(0.5, -0.25, 1), Float32Array.of(0.25, 0.75)]);
  expect([...mixed]).toEqual([0.375, 0.25, 0.5]);
});

it('mixToMono leaves one channel as it is and makes nothing of none', () => {
  const only = Float32Array.of(0.1, -0.2);
  expect(mixToMono([only])).toBe(only);
  expect(mixToMono([])).toHaveLength(0);
});

it('mixWarnings says how many channels were mixed, and nothing about one', () => {
  expect(mixWarnings(1)).toEqual([]);
  expect(mixWarnings(6)).toEqual([{ kind: 'mixed-to-mono', message: '6 channels were mixed to one' }]);
});
