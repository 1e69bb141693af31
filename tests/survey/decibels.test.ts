import { expect, it } from 'vitest';
import { powersToDecibels } from '../../src/survey/decibels.ts';

it('powersToDecibels agrees with the logarithm to 0.03 dB from -300 to 100 dB', () => {
  const wanted = Array.from({ length: 4001 }, (_, index) => -300 + index / 10);
  const powers = Float32Array.from(wanted, (level) => 10 ** (level / 10));
  powersToDecibels(powers);
  const worst = Math.max(...wanted.map((level, index) => Math.abs(level - powers[index]!)));
  expect(worst).toBeLessThan(0.03);
});
