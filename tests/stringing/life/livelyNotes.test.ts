import { describe, expect, it } from 'vitest';
import { compareLives, livelyNotes } from '../../../src/stringing/life/livelyNotes.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { beatReading } from '../beatReading.ts';

/** 8 s at C4, halved every 14 notes; strikes and notes scatter by 20 %. */
const readings = (seed: number, factorOf: (midi: number) => number = () => 1) => {
  const random = seededRandom(seed);
  return Array.from({ length: 60 }, (_, index) => {
    const midi = 40 + index;
    return beatReading({
      midi,
      lifeTimeS: 8 * 2 ** ((60 - midi) / 14) * Math.exp(0.2 * random.normal()) * factorOf(midi),
    });
  });
};

describe('livelyNotes', () => {
  it('points out the note that dies much sooner than its neighbours, and no other', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const notes = livelyNotes(readings(seed, (midi) => (midi === 70 ? 0.25 : 1)));
      expect(notes.filter(({ isWeak }) => isWeak).map(({ midi }) => midi)).toEqual([70]);
      expect(notes.find(({ midi }) => midi === 70)?.ratioToNeighbours).toBeLessThan(0.5);
    }
  });

  it('has no curve and accuses nobody where few notes were measured, and leaves bad takes out', () => {
    const few = livelyNotes([...readings(1).slice(0, 4), beatReading({ midi: 90, lifeTimeS: 1, faults: ['knock'] })]);
    expect(few.map(({ expectedS, isWeak }) => [expectedS, isWeak])).toEqual(Array(4).fill([null, false]));
  });
});

describe('compareLives', () => {
  const lost = (comparison: ReturnType<typeof compareLives>) =>
    comparison.known
      ? comparison.notes.filter(({ change }) => change === 'lost').map(({ midi }) => midi)
      : comparison.reason;

  it('tells the note that lost life from a change that all share', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const now = readings(seed + 100, (midi) => (midi === 75 ? 0.2 : 1) * 3);
      const comparison = compareLives(readings(seed), now);
      expect(lost(comparison)).toEqual([75]);
      expect(comparison.known && comparison.commonRatio).toBeGreaterThan(2.5);
      const gained = comparison.known ? comparison.notes.filter(({ change }) => change === 'gained') : [];
      // By chance, one in twenty of those told.
      expect(gained.length).toBeLessThanOrEqual(1);
    }
  });

  it('finds nothing between two surveys that differ by chance', () => {
    const falsely = Array.from({ length: 20 }, (_, seed) =>
      lost(compareLives(readings(seed), readings(seed + 500))),
    ).flat();
    expect(falsely.length).toBeLessThanOrEqual(1);
  });

  it('compares the same string only, and needs eight of them', () => {
    const open = readings(1).map((reading) => ({ ...reading, stringPosition: 0 as const }));
    expect(compareLives(open, readings(2))).toEqual({ known: false, reason: 'too-few-notes' });
  });
});
