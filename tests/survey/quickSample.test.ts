import { describe, expect, it } from 'vitest';
import { COMPASS_85, COMPASS_88, noteCount } from '../../src/piano/compass.ts';
import type { RowBreaks } from '../../src/piano/surveyScope.ts';
import { leastSampleCount, quickSample, USUAL_SAMPLE_COUNT } from '../../src/survey/quickSample.ts';

const GRAND: RowBreaks = { compass: COMPASS_88, bassBridgeTopMidi: 40, strutsAfterMidi: [40, 58, 71, 83] };
const UNKNOWN: RowBreaks = { compass: COMPASS_85, bassBridgeTopMidi: null, strutsAfterMidi: [] };

/** From note to note, and from the compass's ends twice as far: nothing ends the stretch there. */
function widestStep(notes: readonly number[], { compass }: RowBreaks): number {
  const inner = notes.slice(1).map((midi, index) => midi - (notes[index] ?? midi));
  const below = 2 * ((notes[0] ?? 0) - compass.lowestMidi) + 1;
  return Math.max(below, 2 * (compass.highestMidi - (notes.at(-1) ?? 0)) + 1, ...inner);
}

describe('quickSample', () => {
  it.each([8, 12, USUAL_SAMPLE_COUNT, 33, 60, 88])('of %i notes has so many, each once, in rising order', (count) => {
    const notes = quickSample(GRAND, count);
    expect(notes).toHaveLength(count);
    expect([...new Set(notes)].sort((a, b) => a - b)).toEqual(notes);
    expect(notes.every((midi) => midi >= 21 && midi <= 108)).toBe(true);
  });

  it('has both sides of every strut and of the bass break, however small', () => {
    for (const count of [1, 8, 20])
      expect(quickSample(GRAND, count)).toEqual(expect.arrayContaining([40, 41, 58, 59, 71, 72, 83, 84]));
    expect(quickSample({ ...UNKNOWN, bassBridgeTopMidi: 43 }, 6)).toEqual(expect.arrayContaining([43, 44]));
  });

  it('spreads evenly where no break is known', () => {
    const steps = quickSample(UNKNOWN, 17)
      .slice(1)
      .map((midi, index) => midi - (quickSample(UNKNOWN, 17)[index] ?? 0));
    expect(steps).toEqual(Array.from({ length: 16 }, () => 5));
  });

  it.each([
    ['with struts', GRAND, 20, 6],
    ['with struts', GRAND, 33, 4],
    ['of which nothing is known', UNKNOWN, 20, 5],
  ] as const)('leaves no wide gap in an instrument %s', (_, row, count, steps) => {
    expect(widestStep(quickSample(row, count), row)).toBeLessThanOrEqual(steps + 1);
  });

  it('never takes more notes than there are, nor fewer than the breaks need', () => {
    expect(quickSample(GRAND, 500)).toHaveLength(noteCount(COMPASS_88));
    expect(quickSample(GRAND, 0)).toHaveLength(leastSampleCount(GRAND));
    expect(leastSampleCount(GRAND)).toBe(8);
    expect(leastSampleCount(UNKNOWN)).toBe(6);
  });

  it('copes with struts side by side and at the ends of the compass', () => {
    const crowded: RowBreaks = {
      compass: { lowestMidi: 60, highestMidi: 70 },
      bassBridgeTopMidi: 70,
      strutsAfterMidi: [60, 61, 62, 30],
    };
    expect(quickSample(crowded, 6)).toEqual([60, 61, 62, 63, ...quickSample(crowded, 6).slice(4)]);
    expect(quickSample(crowded, 11)).toEqual([60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70]);
  });
});
