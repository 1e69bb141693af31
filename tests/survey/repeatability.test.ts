import { describe, expect, it } from 'vitest';
import type { NoteReading } from '../../src/piano/reading.ts';
import {
  pooledRepeatability,
  type RepeatedStrikes,
  repeatabilityCents,
  repeatedStrikes,
  takeLevelDbfs,
} from '../../src/survey/repeatability.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { rootMeanSquare } from '../support/statistics.ts';
import { type Strike, struckReading } from './struckReading.ts';

const scatter = (kept: Strike, ...others: Strike[]) => repeatedStrikes(struckReading(kept), others.map(struckReading));

describe('repeatedStrikes', () => {
  it('is the standard deviation of partial 1 over the comparable takes', () => {
    // By hand: mean 0.2, squares 0.04 + 0.01 + 0.09, over two.
    expect(scatter({ cents: 0 }, { cents: 0.1 }, { cents: 0.5 })?.scatterCents).toBeCloseTo(Math.sqrt(0.07), 12);
    expect(scatter({ cents: 3 }, { cents: 3.2 })?.scatterCents).toBeCloseTo(0.2 / Math.SQRT2, 12);
  });

  it('leaves out takes more than 10 dB louder or softer than the kept one', () => {
    expect(scatter({ cents: 0, levelDbfs: -20 }, { cents: 0.5, levelDbfs: -9 })).toBeUndefined();
    expect(scatter({ cents: 0, levelDbfs: -20 }, { cents: 0.5, levelDbfs: -31 })).toBeUndefined();
    expect(scatter({ cents: 0, levelDbfs: -20 }, { cents: 0.5, levelDbfs: -11 })?.takeCount).toBe(2);
    expect(scatter({ cents: 0 }, { cents: 0.1 }, { cents: 9, levelDbfs: -2 })?.scatterCents).toBeCloseTo(0.0707, 3);
  });

  it('leaves out takes that cannot be used, that were read in another way, or that have no partials', () => {
    expect(scatter({ cents: 0 }, { cents: 1, isUsable: false })).toBeUndefined();
    expect(scatter({ cents: 0, isUsable: false }, { cents: 1 })).toBeUndefined();
    expect(scatter({ cents: 0 }, { cents: 1, source: 'fitted' })).toBeUndefined();
    expect(scatter({ cents: 0, source: 'fitted' }, { cents: 1, source: 'fitted' })?.takeCount).toBe(2);
    expect(
      repeatedStrikes({ ...struckReading({ cents: 0 }), partials: [] }, [struckReading({ cents: 1 })]),
    ).toBeUndefined();
  });

  it('says that takes disagree where no strike explains it and their own uncertainties do not either', () => {
    expect(scatter({ cents: 0 }, { cents: 6 })?.disagrees).toBe(true);
    expect(scatter({ cents: 0 }, { cents: 2 })?.disagrees).toBe(false);
    expect(scatter({ cents: 0, ownCents: 3 }, { cents: 6, ownCents: 3 })?.disagrees).toBe(false);
  });
});

it('takeLevelDbfs adds the powers of the partials', () => {
  const partials = [-20, -20].map((levelDbfs) => ({ ...struckReading({ cents: 0 }).partials[0]!, levelDbfs }));
  expect(takeLevelDbfs({ partials } as Pick<NoteReading, 'partials'>)).toBeCloseTo(-16.99, 2);
  expect(takeLevelDbfs({ partials: [] })).toBeNull();
});

const strikes = (midi: number, scatterCents: number, takeCount = 2, disagrees = false): RepeatedStrikes => ({
  midi,
  takeCount,
  scatterCents,
  disagrees,
});

describe('pooledRepeatability', () => {
  it('is the root of the mean variance, each note counted by its repeats', () => {
    const [all, middle, ...more] = pooledRepeatability([strikes(60, 0.3, 4), strikes(61, 0.1, 2)]);
    // By hand: √((3 · 0.09 + 1 · 0.01) / 4).
    expect(all).toEqual({
      register: 'all',
      scatterCents: expect.closeTo(Math.sqrt(0.07), 12),
      repeatCount: 4,
      noteCount: 2,
    });
    expect(middle).toMatchObject({ register: 'middle', repeatCount: 4 });
    expect(more).toEqual([]);
  });

  it('takes fewer than four repeats, or one note alone, for too little', () => {
    expect(pooledRepeatability([strikes(60, 0.1), strikes(62, 0.1), strikes(64, 0.1)])).toEqual([]);
    expect(pooledRepeatability([strikes(60, 0.1, 9)])).toEqual([]);
    expect(pooledRepeatability([])).toEqual([]);
  });

  it('keeps the registers apart where each has enough repeats', () => {
    const bass = [28, 30, 32, 34].map((midi) => strikes(midi, 1));
    const treble = [84, 90, 96, 102].map((midi) => strikes(midi, 0.1));
    const pools = pooledRepeatability([...bass, ...treble, strikes(60, 0.2)]);
    expect(pools.map(({ register }) => register)).toEqual(['all', 'bass', 'treble']);
    expect(pools[1]?.scatterCents).toBeCloseTo(1, 12);
    expect(pools[2]?.scatterCents).toBeCloseTo(0.1, 12);
  });

  it('leaves out strings whose takes disagree', () => {
    const sound = [60, 61, 62, 63].map((midi) => strikes(midi, 0.1));
    expect(pooledRepeatability([...sound, strikes(64, 20, 2, true)])[0]?.scatterCents).toBeCloseTo(0.1, 12);
  });

  it('finds the scatter that forty repeated strikes were drawn with', () => {
    const random = seededRandom(21);
    const found = Array.from({ length: 40 }, (_, index) => {
      const cents = () => 0.15 * random.normal();
      return scatter({ cents: cents(), midi: 50 + (index % 30) }, { cents: cents() }, { cents: cents() })!;
    });
    // 80 repeats: the estimate's own standard error is 8 %.
    expect(pooledRepeatability(found)[0]!.scatterCents / 0.15).toBeGreaterThan(0.8);
    expect(pooledRepeatability(found)[0]!.scatterCents / 0.15).toBeLessThan(1.2);
    expect(rootMeanSquare(found.map(({ scatterCents }) => scatterCents))! / 0.15).toBeCloseTo(1, 0);
  });
});

describe('repeatabilityCents', () => {
  const pools = pooledRepeatability([28, 30, 32, 34, 60].map((midi) => strikes(midi, midi < 48 ? 0.8 : 0.2)));

  it('is the pooled figure of the register where two takes happened to agree', () => {
    expect(repeatabilityCents(strikes(40, 0.001), pools)).toBeCloseTo(0.8, 12);
  });

  it('is that of all where the register has none of its own', () => {
    expect(repeatabilityCents(strikes(90, 0.001), pools)).toBeCloseTo(pools[0]!.scatterCents, 12);
  });

  it('is the note’s own where that is larger, or where there is nothing else', () => {
    expect(repeatabilityCents(strikes(40, 2), pools)).toBe(2);
    expect(repeatabilityCents(strikes(60, 0.05), [])).toBe(0.05);
  });
});
