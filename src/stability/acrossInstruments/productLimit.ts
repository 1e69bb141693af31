/**
 * The share that still holds so many years after the work, from instruments watched for different lengths of time.
 *
 * Model: the product-limit estimate (E. L. Kaplan and P. Meier, J. Am. Statist. Assoc. 53 (1958) 457–481). An instrument counts from when it
 * came under observation, which may be years after the work, until it no longer held or was last seen; what became of it later does
 * not count. It stops being valid where instruments are seen more or less often because of how they hold. An end is dated when a visit
 * showed it; it came about at some time since the visit before.
 * Uncertainty: M. Greenwood's formula (The Natural Duration of Cancer, 1926); limits by the beta product procedure of M. P. Fay, E. H.
 * Brittain and M. A. Proschan, Biostatistics 14 (2013) 723–736, with the product's distribution matched by its first two moments (from
 * memory), which is the exact binomial interval of Clopper and Pearson while nobody is lost from sight. Late entry is beyond their proof;
 * in simulations of 6 to 30 instruments (ends after 12 years on average, six in ten cut off before, with and without late entry, 1500 each) the 95 %
 * limits held the truth in 97 to 99 of 100 cases, the estimate ± 1.96 Greenwood uncertainties in 87 to 91 (measured by us).
 */
import { type Beta, betaQuantile } from './betaDistribution.ts';

export type Span = {
  /** Since the work: when observation began, and when it ended or the instrument no longer held. */
  readonly entryYears: number;
  readonly exitYears: number;
  /** True: it no longer held. False: it still held when it was last seen. */
  readonly hasEnded: boolean;
};

export type ShareStep = {
  readonly years: number;
  /** Just before this time. */
  readonly atRiskCount: number;
  readonly endedCount: number;
  /** From this time on. */
  readonly share: number;
  readonly shareU: number;
  /** 95 % limits. */
  readonly low: number;
  readonly high: number;
};

export type ShareCurve = {
  /** Since the work: the estimate says what share of those that held until then holds later. 0 where all were watched from the start. */
  readonly fromYears: number;
  /** At its beginning and wherever somebody ended or was last seen, in rising order. */
  readonly steps: readonly ShareStep[];
  /** Ends before `fromYears`, which are not in it. */
  readonly earlierEndCount: number;
};

/** With fewer under observation one early end would throw the whole curve to nought. Chosen; it matters with late entries only. */
const LEAST_AT_RISK = 3;

/** @throws {RangeError} if a span is reversed or not finite. Null where there are never enough under observation at once. */
export function productLimit(spans: readonly Span[]): ShareCurve | null {
  for (const { entryYears, exitYears } of spans)
    if (!(entryYears >= 0 && entryYears < exitYears && exitYears < Infinity))
      throw new RangeError(`a span must run forwards from 0 or later, got ${entryYears} to ${exitYears}`);
  const fromYears = spans
    .map(({ entryYears }) => entryYears)
    .sort((a, b) => a - b)
    .find((years) => atRiskAfter(spans, years) >= LEAST_AT_RISK);
  if (fromYears === undefined) return null;
  const times = spans.map(({ exitYears }) => exitYears).filter((years) => years > fromYears);
  let before: Running = { share: 1, greenwood: 0, parts: [] };
  const steps = [stepOf(spans, fromYears, before, { atRiskCount: atRiskAfter(spans, fromYears), endedCount: 0 })];
  for (const years of [...new Set(times)].sort((a, b) => a - b)) {
    const endedCount = spans.filter((span) => span.hasEnded && span.exitYears === years).length;
    const atRiskCount = atRiskAt(spans, years);
    before = goOn(before, atRiskCount, endedCount);
    steps.push(stepOf(spans, years, before, { atRiskCount, endedCount }));
  }
  const earlierEndCount = spans.filter(({ hasEnded, exitYears }) => hasEnded && exitYears <= fromYears).length;
  return { fromYears, steps, earlierEndCount };
}

/** Under observation just before a time. */
export function atRiskAt(spans: readonly Span[], years: number): number {
  return spans.filter(({ entryYears, exitYears }) => entryYears < years && years <= exitYears).length;
}

function atRiskAfter(spans: readonly Span[], years: number): number {
  return spans.filter(({ entryYears, exitYears }) => entryYears <= years && years < exitYears).length;
}

type Running = { readonly share: number; readonly greenwood: number; readonly parts: readonly Beta[] };

function goOn({ share, greenwood, parts }: Running, atRisk: number, ended: number): Running {
  if (ended === 0) return { share, greenwood, parts };
  return {
    share: share * (1 - ended / atRisk),
    greenwood: greenwood + (atRisk === ended ? 0 : ended / (atRisk * (atRisk - ended))),
    parts: [...parts, { a: atRisk - ended + 1, b: ended }],
  };
}

const TAIL = 0.025;

type Counts = Pick<ShareStep, 'atRiskCount' | 'endedCount'>;

function stepOf(spans: readonly Span[], years: number, running: Running, counts: Counts): ShareStep {
  const { share, greenwood, parts } = running;
  const left = atRiskAfter(spans, years);
  const lower = left === 0 ? null : productOf([...parts, { a: left, b: 1 }]);
  const upper = productOf(parts);
  return {
    years,
    ...counts,
    share,
    shareU: share * Math.sqrt(greenwood),
    low: lower ? betaQuantile(TAIL, lower) : 0,
    high: upper ? betaQuantile(1 - TAIL, upper) : 1,
  };
}

/** The beta distribution with the first two moments of a product of independent ones; null for an empty product, which is one. */
function productOf(parts: readonly Beta[]): Beta | null {
  const [only] = parts;
  if (!only) return null;
  if (parts.length === 1) return only;
  const mean = parts.reduce((product, { a, b }) => (product * a) / (a + b), 1);
  const square = parts.reduce((product, { a, b }) => (product * a * (a + 1)) / ((a + b) * (a + b + 1)), 1);
  const size = (mean * (1 - mean)) / (square - mean ** 2) - 1;
  return { a: mean * size, b: (1 - mean) * size };
}
