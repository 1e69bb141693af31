import { describe, expect, it } from 'vitest';
import { CENTS_PER_CELL, cellPosition, salienceMap } from '../../../src/analysis/tone/salienceMap.ts';

const peak = (hz: number, levelDbfs = -20, snrDb = 50) => ({ hz, levelDbfs, snrDb });
const at = (values: Float64Array, hz: number) => values[Math.round(cellPosition(hz))]!;

it('cellPosition counts an octave as 1200 cents', () => {
  expect((cellPosition(880) - cellPosition(440)) * CENTS_PER_CELL).toBeCloseTo(1200, 9);
  expect(cellPosition(20)).toBe(0);
});

describe('salienceMap', () => {
  it('is full at a clear peak and empty away from it', () => {
    const { hit, weight } = salienceMap([peak(440)], 8000, 0.5);
    expect(at(hit, 440)).toBeGreaterThan(0.95);
    expect(at(weight, 440)).toBeGreaterThan(0.95);
    expect(at(hit, 460)).toBe(0);
    expect(at(hit, 421)).toBe(0);
  });

  it('reaches as far as the spectrum resolves', () => {
    const reach = (toleranceHz: number) =>
      salienceMap([peak(440)], 8000, toleranceHz).hit.filter((x) => x > 0.3).length;
    expect(reach(2)).toBeGreaterThan(1.5 * reach(0.5));
  });

  it('halves the weight for each 12 dB below the strongest', () => {
    const { weight } = salienceMap([peak(440, -20), peak(880, -32), peak(1320, -44)], 8000, 0.5);
    expect(at(weight, 880) / at(weight, 440)).toBeCloseTo(0.5, 1);
    expect(at(weight, 1320) / at(weight, 440)).toBeCloseTo(0.25, 1);
  });

  it('gives a peak that hardly stands out of the noise nothing', () => {
    const { hit, weight } = salienceMap([peak(440), peak(880, -20, 6)], 8000, 0.5);
    expect(at(hit, 880)).toBe(0);
    expect(at(weight, 880)).toBe(0);
  });

  it('adds up the weights from each cell upwards', () => {
    const { weightAbove } = salienceMap([peak(440), peak(880), peak(1320)], 8000, 0.5);
    expect(weightAbove[0]).toBeCloseTo(3, 9);
    expect(at(weightAbove, 600)).toBeCloseTo(2, 9);
    expect(at(weightAbove, 2000)).toBe(0);
  });

  it('measures the rest against the strongest of all, where told', () => {
    const all = [peak(440, -20), peak(880, -44)];
    expect(at(salienceMap([all[1]!], 8000, 0.5, all).weight, 880)).toBeCloseTo(0.25, 1);
    expect(at(salienceMap([all[1]!], 8000, 0.5).weight, 880)).toBeGreaterThan(0.95);
  });

  it('is empty without peaks, and ignores the level of the whole', () => {
    expect(Math.max(...salienceMap([], 8000, 0.5).hit)).toBe(0);
    const levels = [0, -70].map((shiftDb) => salienceMap([peak(440, shiftDb), peak(880, shiftDb - 9)], 8000, 0.5));
    expect(levels[0]!.weight).toEqual(levels[1]!.weight);
  });
});
