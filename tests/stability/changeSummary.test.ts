import { describe, expect, it } from 'vitest';
import type { NoteChange } from '../../src/stability/change.ts';
import { departures, wholeChange } from '../../src/stability/changeSummary.ts';
import { seededRandom } from '../support/seededRandom.ts';

function changes(cents: readonly number[], lowestMidi = 21): NoteChange[] {
  return cents.map((changeCents, index) => ({
    midi: lowestMidi + index,
    stringPosition: 2,
    changeCents,
    standardUncertaintyCents: 0.1,
    method: 'partials',
    partialCount: 5,
  }));
}

describe('wholeChange', () => {
  it('is the median, with the robust scatter about it', () => {
    // Sorted −40, 1, 2, 3, 4, 5, 6: median 3. Distances 43, 2, 1, 0, 1, 2, 3: median 2. Scatter 1.4826·2 = 2.9652.
    // Uncertainty √(π/2)·2.9652/√7 = 1.2533·2.9652/2.6458 = 1.4046.
    const whole = wholeChange(changes([4, 1, -40, 3, 6, 2, 5]));
    expect(whole.known).toBe(true);
    if (!whole.known) return;
    expect(whole.medianCents).toBe(3);
    expect(whole.scatterCents).toBeCloseTo(2.9652, 4);
    expect(whole.standardUncertaintyCents).toBeCloseTo(1.4046, 4);
    expect(whole.stringCount).toBe(7);
  });

  it('is not known from four strings', () => {
    expect(wholeChange(changes([1, 1, 1, 1]))).toEqual({ known: false, reason: 'not-enough-evidence' });
    expect(wholeChange(changes([1, 1, 1, 1, 1])).known).toBe(true);
  });

  it('never states less uncertainty than the readings have', () => {
    const whole = wholeChange(changes(Array.from({ length: 25 }, () => 2)));
    // √(π/2)·0.1/√25 = 0.02507.
    expect(whole.known && whole.standardUncertaintyCents).toBeCloseTo(0.02507, 5);
  });
});

describe('departures', () => {
  it('takes each string against the median of ten neighbours on either side', () => {
    // A straight slope of 1 cent a note: in the middle the neighbours' median is the string itself; at the lowest note the ten
    // neighbours above have the median 5.5, at the second lowest 0, 2, … 11: median 6 − 1 = 5.
    const found = departures(changes(Array.from({ length: 41 }, (_, index) => index)));
    expect(found[20]?.departureCents).toBe(0);
    expect(found[0]?.departureCents).toBe(-5.5);
    expect(found[1]?.departureCents).toBe(-5);
  });

  it('names the string that left its neighbours, not the neighbours', () => {
    const random = seededRandom(5);
    const cents = Array.from({ length: 88 }, (_, index) => 6 * Math.sin(index / 25) + 0.5 * random.normal());
    cents[40] = (cents[40] ?? 0) - 6;
    const standing = departures(changes(cents)).filter((entry) => entry.standsOut);
    expect(standing.map((entry) => entry.midi)).toEqual([61]);
    expect(standing[0]?.departureCents).toBeCloseTo(-6, 0);
    expect(standing[0]?.departureInScatters).toBeLessThan(-4);
  });

  it('calls no string of a steady piano that only follows the season', () => {
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]) {
      const random = seededRandom(seed);
      const cents = Array.from(
        { length: 88 },
        (_, index) => 8 * Math.exp(-(((index - 35) / 20) ** 2)) + random.normal() * 0.7,
      );
      expect(departures(changes(cents)).filter((entry) => entry.standsOut)).toEqual([]);
    }
  });

  it('never calls a departure of under three cents, nor misses a wild one on a piano that did not move at all', () => {
    const cents = Array.from({ length: 30 }, () => 0);
    cents[10] = 2.5;
    cents[20] = -3.5;
    const standing = departures(changes(cents)).filter((entry) => entry.standsOut);
    expect(standing.map((entry) => entry.midi)).toEqual([41]);
  });

  it('compares left strings with left strings only', () => {
    const left = changes(Array.from({ length: 30 }, () => -10)).map((change) => ({
      ...change,
      stringPosition: 1 as const,
    }));
    const right = changes(Array.from({ length: 30 }, () => 15)).map((change) => ({
      ...change,
      stringPosition: 3 as const,
    }));
    const found = departures([...left, ...right]);
    expect(found).toHaveLength(60);
    expect(found.every((entry) => entry.departureCents === 0)).toBe(true);
  });

  it('gives nothing where there are too few neighbours', () => {
    expect(departures(changes([1, 2, 3, 4, 5]))).toEqual([]);
    expect(departures([])).toEqual([]);
  });
});
