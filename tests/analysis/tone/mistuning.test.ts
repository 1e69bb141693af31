import { describe, expect, it } from 'vitest';
import { beatsOf } from '../../../src/analysis/tone/beats.ts';
import { type BeatRow, bestMistuning } from '../../../src/analysis/tone/mistuning.ts';
import type { PartialFit } from '../../../src/analysis/tone/partialFit.ts';
import { centsToHz } from '../../../src/piano/cents.ts';
import { partialOf } from '../partialFits.ts';

const rowOf = (partial: PartialFit): BeatRow => ({ partial, beats: beatsOf(partial), levelDb: 0 });

/** Partial n of A4 whose second string stands so many cents off. */
const mistuned = (n: number, cents: number, ratio = 0.6) =>
  partialOf(n, [
    { hz: 440 * n, amplitude: 0.2 },
    { hz: centsToHz(cents, 440 * n), amplitude: 0.2 * ratio },
  ]);
const single = (n: number) => partialOf(n, [{ hz: 440 * n, amplitude: 0.2 }]);

describe('bestMistuning', () => {
  it.each([3, -3, 1.2, -8])('finds strings %s cents apart, and on which side', (cents) => {
    const found = bestMistuning([1, 2, 3, 4, 5].map((n) => rowOf(mistuned(n, cents))));
    expect(found.cents / Math.abs(cents)).toBeCloseTo(1, 2);
    expect(found.offsetsCents).toHaveLength(1);
    expect(found.offsetsCents[0]! / cents).toBeCloseTo(1, 2);
    expect(found.matched).toHaveLength(5);
    // More than a hundred to one.
    expect(found.logOdds).toBeGreaterThan(Math.log(100));
  });

  it('follows strings of slightly different inharmonicity, whose distance grows with the square of the partial number', () => {
    // B = 0.0008 and 1 % more of it: 0.5 cents at partial 1, 0.95 at partial 8.
    const stiff = (n: number) => 440 * n * Math.sqrt(1 + 0.0008 * n * n);
    const apart = (n: number) => 0.5 + 865.6 * 0.000008 * n * n;
    const rows = [1, 2, 3, 4, 5, 6, 7, 8].map((n) =>
      rowOf(
        partialOf(n, [
          { hz: stiff(n), amplitude: 0.2 },
          { hz: centsToHz(apart(n), stiff(n)), amplitude: 0.12 },
        ]),
      ),
    );
    const found = bestMistuning(rows);
    expect(found.matched).toHaveLength(8);
    expect(found.cents).toBeCloseTo(0.5, 1);
    expect(found.logOdds).toBeGreaterThan(Math.log(100));
  });

  it('does not join beats that only strings of different wire could have', () => {
    const rows = [
      partialOf(1, [
        { hz: 440, amplitude: 0.2 },
        { hz: 440 * 1.001, amplitude: 0.12 },
      ]),
      single(2),
      single(3),
      partialOf(4, [
        { hz: 1760, amplitude: 0.2 },
        { hz: 1760 * 1.006, amplitude: 0.12 },
      ]),
    ].map(rowOf);
    expect(bestMistuning(rows).logOdds).toBeLessThan(-Math.log(20));
  });

  it('allows a partial whose rate the bridge’s coupling has shifted by a tenth', () => {
    const found = bestMistuning([mistuned(1, 3), mistuned(2, 3.3), mistuned(3, 2.8)].map(rowOf));
    expect(found.matched).toHaveLength(3);
  });

  it('speaks against strings out of tune where other partials would have shown the beat', () => {
    const found = bestMistuning([single(1), mistuned(2, 3), single(3), single(4)].map(rowOf));
    expect(found.logOdds).toBeLessThan(-Math.log(20));
  });

  it('does not count partials that could not have shown it', () => {
    const buried = (n: number) => partialOf(n, [{ hz: 440 * n, amplitude: 0.2 }], { noiseRms: 1 });
    const found = bestMistuning([mistuned(1, 3), mistuned(2, 3), buried(3), buried(4)].map(rowOf));
    expect(found.logOdds).toBeGreaterThan(1.5);
  });

  it('is not moved by equal rates on all partials, which no mistuning gives', () => {
    const constant = [1, 2, 3, 4].map((n) =>
      partialOf(n, [
        { hz: 440 * n, amplitude: 0.2 },
        { hz: 440 * n + 1, amplitude: 0.1 },
      ]),
    );
    expect(bestMistuning(constant.map(rowOf)).logOdds).toBeLessThan(0);
  });

  it('has nothing to say without a beat', () => {
    expect(bestMistuning([single(1), single(2)].map(rowOf)).logOdds).toBe(-Infinity);
  });
});
