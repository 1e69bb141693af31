import { describe, expect, it } from 'vitest';
import { summariseTrials, type WhatIfQuestion, type WhatIfTrial, whatIfTrial } from '../../src/stability/whatIf.ts';

const FAST_ZONE: WhatIfQuestion = {
  fault: { kind: 'zone', noteCount: 10, centsPerYear: 4 },
  visitsPerYear: 1,
  noiseFactor: 1,
  isHumidityNoted: true,
  thresholdCentsPerYear: 1,
};

const check = (foundShare: number, state: WhatIfTrial['checks'][number]['state'], wrongCount = 0) => ({
  years: 0,
  state,
  foundShare,
  wrongCount,
});

describe('a trial', () => {
  const first = whatIfTrial(FAST_ZONE, 1);

  it('finds a fast failing zone within its years', () => {
    const last = first.checks.at(-1);
    expect(last?.state).toBe('giving way');
    expect(last?.foundShare).toBeGreaterThan(0.5);
  });

  it('is the same for the same seed, and another for another', () => {
    expect(whatIfTrial(FAST_ZONE, 1)).toEqual(first);
    expect({ ...whatIfTrial(FAST_ZONE, 2), seed: 1 }).not.toEqual(first);
  });

  it('counts nothing as found where nothing is at fault', () => {
    const { checks } = whatIfTrial({ ...FAST_ZONE, fault: { kind: 'none' } }, 2);
    expect(checks.length).toBeGreaterThan(3);
    expect(checks.every(({ foundShare }) => foundShare === 0)).toBe(true);
  });
});

describe('the summary of trials', () => {
  const trial = (seed: number, ...checks: WhatIfTrial['checks']): WhatIfTrial => ({
    seed,
    checks: checks.map((one, index) => ({ ...one, years: index + 1 })),
  });

  it('gives the year from which half, and nine in ten, have found it for good', () => {
    const early = trial(1, check(1, 'giving way'), check(1, 'watch'), check(1, 'giving way'));
    const late = trial(2, check(0, 'holding'), check(0, 'not enough evidence'), check(0.5, 'watch'));
    const { halfFoundYears, mostFoundYears, byYear } = summariseTrials([early, late]);
    expect([halfFoundYears, mostFoundYears]).toEqual([1, 3]);
    expect(byYear.map(({ foundShare }) => foundShare)).toEqual([0.5, 0.5, 1]);
    expect(byYear[2]?.namedShare).toBe(0.75);
    expect(byYear[0]?.holdsShare).toBe(0.5);
  });

  it('does not count a warning about the wrong strings as found', () => {
    const { byYear, halfFoundYears } = summariseTrials([trial(1, check(0, 'giving way', 2))]);
    expect(byYear[0]).toMatchObject({ foundShare: 0, warnsShare: 1, falseShare: 1 });
    expect(halfFoundYears).toBeNull();
  });
});
