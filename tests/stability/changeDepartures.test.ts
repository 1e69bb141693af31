import { describe, expect, it } from 'vitest';
import { departures } from '../../src/stability/changeDepartures.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { noteChanges } from './stringReading.ts';

describe('departures', () => {
  it('takes each string against the line through ten neighbours on either side', () => {
    // A slope of one cent a note: the neighbours 10 … 19 and 21 … 30 say 20 for the string that moved 25, 5 cents more.
    const slope = Array.from({ length: 41 }, (_, index) => index);
    slope[20] = 25;
    const found = departures(noteChanges(slope));
    expect(found[20]).toMatchObject({ midi: 41, departureCents: 5, expectedCents: 20, standsOut: true });
    expect(found.filter((entry) => entry.departureCents !== 0)).toHaveLength(1);
  });

  it('hears only the ten on either side', () => {
    // Note 0 of the row sees notes 1 … 10, all at 0; the step begins at the eleventh.
    const step = Array.from({ length: 30 }, (_, index) => (index > 10 ? 50 : 0));
    expect(departures(noteChanges(step))[0]?.expectedCents).toBe(0);
    const nearer = Array.from({ length: 30 }, (_, index) => (index > 4 ? 50 : 0));
    expect(departures(noteChanges(nearer))[0]?.expectedCents).not.toBe(0);
  });

  it('does not take the break between the bridges for strings that moved', () => {
    const cents = Array.from({ length: 88 }, (_, index) => (index <= 22 ? 5 : 25 * 2 ** (-(index - 22) / 12)));
    const calledWithBreak = departures(noteChanges(cents), 43).filter((entry) => entry.standsOut);
    expect(calledWithBreak).toEqual([]);
    expect(departures(noteChanges(cents)).some((entry) => entry.standsOut)).toBe(true);
  });

  it('names the string that left its neighbours, not the neighbours', () => {
    const random = seededRandom(5);
    const cents = Array.from({ length: 88 }, (_, index) => 6 * Math.sin(index / 25) + 0.5 * random.normal());
    cents[40] = (cents[40] ?? 0) - 6;
    const standing = departures(noteChanges(cents)).filter((entry) => entry.standsOut);
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
      expect(departures(noteChanges(cents)).filter((entry) => entry.standsOut)).toEqual([]);
    }
  });

  it('never calls a departure of under three cents, nor misses a wild one on a piano that did not move at all', () => {
    const cents = Array.from({ length: 30 }, () => 0);
    cents[10] = 2.5;
    cents[20] = -3.5;
    const standing = departures(noteChanges(cents)).filter((entry) => entry.standsOut);
    expect(standing.map((entry) => entry.midi)).toEqual([41]);
  });

  it('compares left strings with left strings only', () => {
    const left = noteChanges(Array.from({ length: 30 }, () => -10)).map((change) => ({
      ...change,
      stringPosition: 1 as const,
    }));
    const right = noteChanges(Array.from({ length: 30 }, () => 15)).map((change) => ({
      ...change,
      stringPosition: 3 as const,
    }));
    const found = departures([...left, ...right]);
    expect(found).toHaveLength(60);
    expect(found.every((entry) => entry.departureCents === 0)).toBe(true);
  });

  it('gives nothing where there are too few neighbours', () => {
    expect(departures(noteChanges([1, 2, 3, 4, 5]))).toEqual([]);
    expect(departures([])).toEqual([]);
  });
});
