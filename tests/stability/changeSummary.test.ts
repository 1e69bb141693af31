import { describe, expect, it } from 'vitest';
import { wholeChange } from '../../src/stability/changeSummary.ts';
import { noteChanges } from './stringReading.ts';

describe('wholeChange', () => {
  it('is the median, with the robust scatter about it', () => {
    // Sorted −40, 1, 2, 3, 4, 5, 6: median 3. Distances 43, 2, 1, 0, 1, 2, 3: median 2. Scatter 1.4826·2 = 2.9652.
    // Uncertainty √(π/2)·2.9652/√7 = 1.2533·2.9652/2.6458 = 1.4046.
    const whole = wholeChange(noteChanges([4, 1, -40, 3, 6, 2, 5]));
    expect(whole.known).toBe(true);
    if (!whole.known) return;
    expect(whole.medianCents).toBe(3);
    expect(whole.scatterCents).toBeCloseTo(2.9652, 4);
    expect(whole.standardUncertaintyCents).toBeCloseTo(1.4046, 4);
    expect(whole.stringCount).toBe(7);
  });

  it('is not known from four strings', () => {
    expect(wholeChange(noteChanges([1, 1, 1, 1]))).toEqual({ known: false, reason: 'not-enough-evidence' });
    expect(wholeChange(noteChanges([1, 1, 1, 1, 1])).known).toBe(true);
  });

  it('never states less uncertainty than the readings have', () => {
    const whole = wholeChange(noteChanges(Array.from({ length: 25 }, () => 2)));
    // √(π/2)·0.1/√25 = 0.02507.
    expect(whole.known && whole.standardUncertaintyCents).toBeCloseTo(0.02507, 5);
  });
});
