import { describe, expect, it } from 'vitest';
import { fitLifeCurve, lifeAt, type MeasuredLife } from '../../../src/analysis/compass/lifeCurve.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { typicalDecayTimeS } from '../../support/typicalPiano.ts';

const SEEDS = Array.from({ length: 25 }, (_, index) => index + 1);

function lives(seed: number, spread: number, shareOf: (midi: number) => number = () => 1): MeasuredLife[] {
  const random = seededRandom(seed);
  return Array.from({ length: 88 }, (_, index) => {
    const midi = 21 + index;
    return {
      midi,
      stringPosition: 0,
      lifeTimeS: typicalDecayTimeS(midi) * Math.exp(spread * random.normal()) * shareOf(midi),
    };
  });
}

const weak = (notes: readonly MeasuredLife[]) =>
  fitLifeCurve(notes)!
    .notes.filter(({ isWeak }) => isWeak)
    .map(({ midi }) => midi);

describe('the curve of how long notes live', () => {
  it('is found within a fifth all along the compass', () => {
    for (const seed of SEEDS.slice(0, 10)) {
      const curve = fitLifeCurve(lives(seed, 0.25))!;
      for (const midi of [24, 36, 48, 60, 72, 84, 96, 105])
        expect(
          Math.abs(Math.log(lifeAt(curve, midi).lifeTimeS / typicalDecayTimeS(midi))),
          `${seed} ${midi}`,
        ).toBeLessThan(0.2);
    }
  });

  it('finds the spread from note to note', () => {
    const found = SEEDS.slice(0, 10).map((seed) => fitLifeCurve(lives(seed, 0.3))!.spread);
    expect(found.reduce((sum, one) => sum + one, 0) / found.length).toBeCloseTo(0.3, 1);
  });

  it('is not pulled down by dead notes, one in ten', () => {
    const curve = fitLifeCurve(lives(3, 0.2, (midi) => (midi % 10 === 0 ? 0.1 : 1)))!;
    for (const midi of [36, 60, 84])
      expect(lifeAt(curve, midi).lifeTimeS / typicalDecayTimeS(midi), `midi ${midi}`).toBeGreaterThan(0.82);
  });

  it('follows the instrument and not the single note', () => {
    const curve = fitLifeCurve(lives(4, 0.05, (midi) => (midi === 60 ? 1.8 : 1)))!;
    expect(lifeAt(curve, 60).lifeTimeS / typicalDecayTimeS(60)).toBeLessThan(1.15);
    expect(curve.notes.find(({ midi }) => midi === 60)!.ratioToCurve).toBeGreaterThan(1.5);
  });

  it('is null with fewer than eight notes', () => {
    expect(fitLifeCurve(lives(1, 0.2).slice(0, 7))).toBeNull();
    expect(fitLifeCurve(lives(1, 0.2).slice(0, 8))).not.toBeNull();
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a life of %s s', (lifeTimeS) => {
    expect(() => fitLifeCurve([...lives(1, 0.2), { midi: 60, stringPosition: 0, lifeTimeS }])).toThrow(RangeError);
  });
});

describe('weak notes', () => {
  it('are rare where nothing is wrong: at most one instrument in ten has any', () => {
    expect(SEEDS.filter((seed) => weak(lives(seed, 0.35)).length > 0).length).toBeLessThanOrEqual(2);
  });

  it('are found where a note lives a quarter as long as its neighbours', () => {
    const found = SEEDS.filter((seed) => weak(lives(seed, 0.25, (midi) => (midi === 66 ? 0.25 : 1))).includes(66));
    expect(found.length).toBeGreaterThan(20);
  });

  it('are never notes that live more than half as long as the rest, nor those that live longer', () => {
    const even = lives(6, 0.01, (midi) => (midi === 60 ? 0.6 : midi === 70 ? 3 : midi === 80 ? 0.4 : 1));
    const { notes } = fitLifeCurve(even)!;
    expect(notes.find(({ midi }) => midi === 60)!.departureInSigmas).toBeLessThan(-5);
    expect(weak(even)).toEqual([80]);
  });
});
