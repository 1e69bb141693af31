import { describe, expect, it } from 'vitest';
import { learnTails, type Tails } from '../../../src/stability/drift/changeTails.ts';
import type { OwnHistory } from '../../../src/stability/drift/ownChanges.ts';
import { repetition } from '../../../src/stability/drift/repetition.ts';
import {
  bayesFactors,
  learnScatterWeights,
  OWN_SCATTERS,
  slipEvidence,
  USUAL_SCATTER_WEIGHTS,
} from '../../../src/stability/drift/slipEvidence.ts';
import { stringRate } from '../../../src/stability/drift/stringRates.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { historyOf, withChanges } from './stringHistories.ts';

const TAILS: Tails = { freedom: 6, scale: 1 };

function factorsOf(history: OwnHistory) {
  return bayesFactors(slipEvidence(history, TAILS, 1), USUAL_SCATTER_WEIGHTS);
}

describe('the evidence for a slip', () => {
  it('grows with every interval in which the string goes flat again', () => {
    const evidence = [6, 12, 24].map(
      (count) => factorsOf(historyOf({ count, centsPerYear: -2 }, seededRandom(21))).logFlat,
    );
    expect(evidence[0]).toBeGreaterThan(2);
    expect(evidence[1]).toBeGreaterThan((evidence[0] ?? 0) + 2);
    expect(evidence[2]).toBeGreaterThan((evidence[1] ?? 0) + 4);
  });

  it('is none in one large fall, however large', () => {
    const steady = historyOf({ count: 10, sigmaCents: 0.4 }, seededRandom(22));
    for (const cents of [-4, -8, -20]) expect(factorsOf(withChanges(steady, { 4: cents })).logFlat).toBeLessThan(2);
  });

  it('speaks against a slip where a string keeps its place', () => {
    expect(factorsOf(historyOf({ count: 12 }, seededRandom(23))).logFlat).toBeLessThan(-1);
  });

  it('is not taken from a string that answers the season more than its neighbours', () => {
    const history = historyOf({ count: 12, strayedResponse: -0.3 }, seededRandom(24));
    expect(factorsOf(history).logFlat).toBeLessThan(0);
  });

  it('turns round with the signs of the changes', () => {
    const history = historyOf({ count: 8, centsPerYear: -1.5, strayedResponse: 0.1 }, seededRandom(25));
    const turned = { ...history, changes: history.changes.map((change) => ({ ...change, cents: -change.cents })) };
    expect(factorsOf(turned).logSharp).toBeCloseTo(factorsOf(history).logFlat, 9);
    expect(factorsOf(turned).logFlat).toBeCloseTo(factorsOf(history).logSharp, 9);
  });

  it('is less from a string that strays much by itself, once that is learnt', () => {
    const random = seededRandom(26);
    const calm = Array.from({ length: 60 }, () => slipEvidence(historyOf({ count: 8 }, random), TAILS, 1));
    const wild = Array.from({ length: 60 }, () => {
      const history = historyOf({ count: 8, sigmaCents: 1.5 }, random);
      const changes = history.changes.map((change) => ({ ...change, sigmaCents: 0.5 }));
      return slipEvidence({ ...history, changes }, TAILS, 1);
    });
    const meanScatter = (evidence: typeof calm) =>
      learnScatterWeights(evidence, () => 1).reduce((sum, weight, f) => sum + weight * (OWN_SCATTERS[f] ?? 0), 0);
    expect(meanScatter(calm)).toBeLessThan(1.3);
    expect(meanScatter(wild)).toBeGreaterThan(2);
  });
});

describe('learnt tails', () => {
  const tailsOf = (noise: (random: ReturnType<typeof seededRandom>) => number, seed: number) => {
    const random = seededRandom(seed);
    const histories = Array.from({ length: 200 }, () => {
      const history = historyOf({ count: 8 }, random);
      return withChanges(history, Object.fromEntries(history.changes.map((_, j) => [j, noise(random)])));
    });
    return learnTails(histories);
  };

  it('are light for normal noise, though few changes of each string are left to tell', () => {
    const { freedom, scale } = tailsOf((random) => 0.5 * random.normal(), 31);
    expect(freedom).toBeGreaterThanOrEqual(9);
    expect(Math.abs(scale - 1)).toBeLessThan(0.11);
  });

  it('are heavy where one change in ten is four times as large', () => {
    const { freedom } = tailsOf((random) => (random.uniform() < 0.1 ? 2 : 0.5) * random.normal(), 32);
    expect(freedom).toBe(4);
  });
});

describe('repetition', () => {
  it('is little where one change alone makes the rate', () => {
    const steady = historyOf({ count: 3, sigmaCents: 0.3 }, seededRandom(41));
    const once = withChanges(steady, { 0: 0, 1: -5, 2: 0 });
    expect(stringRate(once).centsPerYear).toBeLessThan(-2);
    expect(repetition(once)).toBeLessThan(0.5);
  });

  it('stays where every change falls', () => {
    expect(repetition(historyOf({ count: 9, centsPerYear: -2, sigmaCents: 0.3 }, seededRandom(42)))).toBeGreaterThan(4);
  });

  it('is nought with fewer than three changes', () => {
    expect(repetition(historyOf({ count: 2, centsPerYear: -5 }, seededRandom(43)))).toBe(0);
  });
});
