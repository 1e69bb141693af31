/** Counts and shares of the drift table's rows, from the judged histories. */
import { normalBelow } from '../../src/stability/drift/statistics.ts';
import { median, percentOf } from '../support/statistics.ts';
import type { DriftResult, JudgedString } from './driftJob.ts';

/** Slower than this is no slip. */
const SLIPS_CENTS_PER_YEAR = -0.05;

export type Way = { readonly name: string; readonly flags: (string: JudgedString) => boolean };

export function isSlipping(string: JudgedString): boolean {
  return string.slipCentsPerYear < SLIPS_CENTS_PER_YEAR;
}

export type FlagCount = {
  readonly right: number;
  readonly wrong: number;
  readonly slipping: number;
  /** Instruments with a wrong flag. */
  readonly wronged: number;
};

export function countFlags(results: readonly DriftResult[], { flags }: Way): FlagCount {
  const all = results.flatMap(({ strings }) => strings);
  const flagged = all.filter(flags);
  return {
    right: flagged.filter(isSlipping).length,
    wrong: flagged.filter((string) => !isSlipping(string)).length,
    slipping: all.filter(isSlipping).length,
    wronged: results.filter(({ strings }) => strings.some((string) => flags(string) && !isSlipping(string))).length,
  };
}

/** The limits with which a way does best on these histories (largest F1): the kindest that can be asked of it. */
export function kindestLimits<L>(
  results: readonly DriftResult[],
  limits: readonly L[],
  flags: (string: JudgedString, limit: L) => boolean,
): L {
  const score = (limit: L) => {
    const { right, wrong, slipping } = countFlags(results, { name: '', flags: (string) => flags(string, limit) });
    return right === 0 ? 0 : (2 * right) / (right + wrong + slipping);
  };
  return limits.reduce((best, limit) => (score(limit) > score(best) ? limit : best));
}

/**
 * Share of the slipping strings, in percent, that could be flagged with 5 % of all flags wrong if everything but a string's own slip and
 * noise were known: the likelihood ratio of the known slip at one limit for all, normal noise.
 */
export function ceilingPercent(results: readonly DriftResult[]): number | undefined {
  const all = results.flatMap(({ strings }) => strings);
  const slipping = all.filter(isSlipping);
  const slip = median(slipping.map(({ slipCentsPerYear }) => -slipCentsPerYear));
  if (slip === undefined) return undefined;
  for (let limit = 0; limit < 20; limit += 0.1) {
    const above = (string: JudgedString) => {
      const times = slip / string.leastUncertainty;
      const cut = limit / times + times / 2;
      return normalBelow((isSlipping(string) ? times : 0) - cut);
    };
    const right = slipping.reduce((sum, string) => sum + above(string), 0);
    const wrong = all.reduce((sum, string) => (isSlipping(string) ? sum : sum + above(string)), 0);
    if (wrong <= 0.05 * (right + wrong)) return (100 * right) / slipping.length;
  }
  return 0;
}

/** Share of the 95 % intervals, in percent, that hold the true rate: of steady strings, and of slipping ones. */
export function coverage(results: readonly DriftResult[], of: (string: JudgedString) => boolean): number | undefined {
  const judged = results.flatMap(({ strings }) => strings).filter((string) => of(string) && string.estimate !== null);
  return percentOf(
    judged,
    ({ estimate, standardUncertainty, slipCentsPerYear }) =>
      Math.abs(estimate! - slipCentsPerYear) <= 1.96 * standardUncertainty!,
  );
}

/** Instruments with a flag on a steady pin or a zone where there is none, in percent. */
export function falseAlarmPercent(results: readonly DriftResult[]): number | undefined {
  return percentOf(
    results,
    ({ strings, zones, trueZone }) =>
      strings.some((string) => string.isFlagged && !isSlipping(string)) ||
      zones.some((zone) => !trueZone || overlap(zone, trueZone) <= 0),
  );
}

type Notes = { readonly fromMidi: number; readonly toMidi: number };

function overlap(a: Notes, b: Notes): number {
  return Math.min(a.toMidi, b.toMidi) - Math.max(a.fromMidi, b.fromMidi) + 1;
}

/** The found zone that shares half of both, if there is one. */
export function matchingZone({ zones, trueZone }: DriftResult): Notes | undefined {
  if (!trueZone) return undefined;
  const length = ({ fromMidi, toMidi }: Notes) => toMidi - fromMidi + 1;
  return zones.find((zone) => overlap(zone, trueZone) >= 0.5 * Math.max(length(zone), length(trueZone)));
}

export function borderErrors(results: readonly DriftResult[]): number[] {
  return results.flatMap((result) => {
    const zone = matchingZone(result);
    const { trueZone } = result;
    if (!zone || !trueZone) return [];
    return [Math.abs(zone.fromMidi - trueZone.fromMidi), Math.abs(zone.toMidi - trueZone.toMidi)];
  });
}
