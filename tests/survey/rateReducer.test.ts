import { describe, expect, it } from 'vitest';
import { createRateReducer } from '../../src/survey/rateReducer.ts';

const tone = (hz: number, rate: number, length: number) =>
  Float32Array.from({ length }, (_, index) => Math.sin((2 * Math.PI * hz * index) / rate));

describe('createRateReducer', () => {
  it.each([
    [22050, 1],
    [48000, 1],
    [88200, 2],
    [96000, 2],
    [176400, 4],
    [192000, 4],
  ])('brings %d Hz down by a factor of %d', (rate, factor) => {
    expect(createRateReducer(rate)).toMatchObject({ factor, reducedRateHz: rate / factor });
  });

  it.each([96000, 192000])('leaves a tone at its place in time and in strength (%d Hz)', (rate) => {
    const reducer = createRateReducer(rate);
    const reduced = reducer.push(tone(3000, rate, rate / 10));
    const expected = tone(3000, reducer.reducedRateHz, reduced.length);
    // After the first ms, where the filter still sees the zeros before the beginning. 1 %: the filter's own ripple.
    const worst = Math.max(...reduced.slice(50).map((value, index) => Math.abs(value - expected[index + 50]!)));
    expect(worst).toBeLessThan(0.01);
  });

  it('takes away what the lower rate cannot hold', () => {
    const reduced = createRateReducer(96000).push(tone(40000, 96000, 9600));
    expect(Math.max(...reduced.slice(50).map(Math.abs))).toBeLessThan(0.01);
  });

  it('does not depend on the blocks', () => {
    const samples = tone(1000, 96000, 5000);
    const whole = createRateReducer(96000).push(samples);
    const reducer = createRateReducer(96000);
    const pieces = [];
    for (let start = 0; start < samples.length; start += 37)
      pieces.push(...reducer.push(samples.subarray(start, start + 37)));
    expect(pieces).toEqual([...whole]);
  });
});
