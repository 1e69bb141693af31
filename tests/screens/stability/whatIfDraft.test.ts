import { expect, it } from 'vitest';
import { countOf, FIRST_DRAFT, questionOf, summarySentences } from '../../../src/screens/stability/whatIfDraft.ts';
import type { WhatIfSummary } from '../../../src/stability/whatIf.ts';

const summary = (halfFoundYears: number | null, mostFoundYears: number | null): WhatIfSummary => ({
  trialCount: 20,
  halfFoundYears,
  mostFoundYears,
  byYear: [{ years: 8, foundShare: 0, warnsShare: 0.1, holdsShare: 0.85, falseShare: 0.05, namedShare: 0 }],
});

it('the fields become a question', () => {
  expect(questionOf({ ...FIRST_DRAFT, fault: 'zone', noteCount: '12', rate: '4', humidity: 'unnoted' }, 1.5)).toEqual({
    fault: { kind: 'zone', noteCount: 12, centsPerYear: 4 },
    visitsPerYear: 2,
    noiseFactor: 1,
    isHumidityNoted: false,
    thresholdCentsPerYear: 1.5,
  });
});

it('the answer says after how long the fault is found, or that it is not', () => {
  expect(summarySentences(summary(2, 4), 'pins')[0]).toContain('after 2 years, nine in ten after 4 years');
  expect(summarySentences(summary(2, null), 'pins')[0]).toContain('nine in ten are not');
  expect(summarySentences(summary(null, null), 'zone')[0]).toMatch(/Fewer than half/);
  expect(summarySentences(summary(null, null), 'none').join(' ')).toMatch(/17 of 20 .*1 of 20/);
});

it('so few trials are counts, not percentages', () => {
  expect(countOf(0.35, 20)).toBe('7 of 20');
});
