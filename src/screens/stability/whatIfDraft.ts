/** A question to invented pianos, as its fields hold it. */
import { formatYearCount } from '../../piano/formatStability.ts';
import type { WhatIfQuestion, WhatIfSummary } from '../../stability/whatIf.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stability.whatIf;

export type WhatIfDraft = {
  readonly fault: 'pins' | 'zone' | 'none';
  readonly pinCount: '1' | '3' | '10';
  readonly noteCount: '6' | '12' | '20';
  readonly rate: '0.5' | '1' | '2' | '4' | '8';
  readonly visits: '1' | '2' | '3' | '4';
  readonly noise: '0.5' | '1' | '2';
  readonly humidity: 'noted' | 'unnoted';
};

export const PIN_COUNTS: readonly WhatIfDraft['pinCount'][] = ['1', '3', '10'];
export const NOTE_COUNTS: readonly WhatIfDraft['noteCount'][] = ['6', '12', '20'];
export const RATES: readonly WhatIfDraft['rate'][] = ['0.5', '1', '2', '4', '8'];
export const VISITS: readonly WhatIfDraft['visits'][] = ['1', '2', '3', '4'];
export const NOISES: readonly WhatIfDraft['noise'][] = ['0.5', '1', '2'];

export const FIRST_DRAFT: WhatIfDraft = {
  fault: 'pins',
  pinCount: '3',
  noteCount: '12',
  rate: '2',
  visits: '2',
  noise: '1',
  humidity: 'noted',
};

export function questionOf(draft: WhatIfDraft, thresholdCentsPerYear: number): WhatIfQuestion {
  const centsPerYear = Number(draft.rate);
  const faults = {
    none: { kind: 'none' },
    pins: { kind: 'pins', pinCount: Number(draft.pinCount), centsPerYear },
    zone: { kind: 'zone', noteCount: Number(draft.noteCount), centsPerYear },
  } as const;
  return {
    fault: faults[draft.fault],
    visitsPerYear: Number(draft.visits) as WhatIfQuestion['visitsPerYear'],
    noiseFactor: Number(draft.noise),
    isHumidityNoted: draft.humidity === 'noted',
    thresholdCentsPerYear,
  };
}

/** A share of trials, as a count of them: so few are no percentage. @example countOf(0.7, 20) // '14 of 20' */
export function countOf(share: number, trialCount: number): string {
  return `${Math.round(share * trialCount)} of ${trialCount}`;
}

export function summarySentences(summary: WhatIfSummary, fault: WhatIfDraft['fault']): string[] {
  const { halfFoundYears, mostFoundYears, byYear, trialCount } = summary;
  const last = byYear.at(-1);
  if (fault === 'none')
    return last
      ? [words.steady(countOf(last.holdsShare, trialCount)), words.wrong(countOf(last.falseShare, trialCount))]
      : [];
  if (halfFoundYears === null) return [words.foundSeldom];
  if (mostFoundYears === null) return [words.foundHalf(formatYearCount(halfFoundYears))];
  return [words.found(formatYearCount(halfFoundYears), formatYearCount(mostFoundYears))];
}

export function choice<Value extends string>(value: Value): { value: Value; label: string } {
  return { value, label: value };
}
