/**
 * One partial before and after something was done to its string: what its beat was, what it is, and whether the difference is more
 * than strikes differ by.
 */
import type { NoteReading } from '../../piano/reading.ts';
import { partialOf, referenceBeat, type SideBeat, sideBeat, takeBeat } from './sideBeat.ts';
import { fewCyclesScatter, rateScatterHz, usualScatter } from './strikeScatter.ts';

export type PartialTrial = {
  readonly partialNumber: number;
  /** Of the louder side, re full scale. */
  readonly levelDbfs: number;
  readonly before: SideBeat;
  readonly after: SideBeat;
  /** After less before. */
  readonly ratioChange: number;
  readonly ratioChangeStandardUncertainty: number;
  readonly rateChangeHz: number | null;
  readonly rateChangeStandardUncertaintyHz: number | null;
  readonly change: 'stops' | 'weaker' | 'stronger' | 'appears' | 'other rate' | 'none';
};

/** Beyond doubt: so many standard uncertainties (one in two thousand by chance) and at least so much (1.7 dB of a shallow beat). Chosen. */
const SIGMAS = 3.5;
/** Where one side has the beat in every take and the other, which would have shown half of it, in none, so many are enough. Chosen. */
const SIGMAS_IF_GONE = 2.5;
const LEAST_RATIO_CHANGE = 0.1;
const LEAST_RATE_CHANGE_SHARE = 0.12;
/** A ratio below this is no beat: 1.5 dB. */
const NO_BEAT_RATIO = 0.09;

/** @param scatterFactor from repeatScatter: what takes of one side differ by, over the usual */
export function comparePartial(
  partialNumber: number,
  before: readonly NoteReading[],
  after: readonly NoteReading[],
  scatterFactor: number,
): PartialTrial | undefined {
  const reference = referenceBeat(partialNumber, [...before, ...after]);
  if (!reference) return undefined;
  const [earlier, later] = [before, after].map((takes) =>
    sideBeat(
      takes.map((take) => takeBeat(take, partialNumber, reference)),
      rateScatterHz,
    ),
  );
  if (!earlier || !later || earlier.takeCount === 0 || later.takeCount === 0) return undefined;
  const levelDbfs = Math.max(
    ...[...before, ...after].flatMap((take) => partialOf(take, partialNumber)?.levelDbfs ?? []),
  );
  return judged({ partialNumber, levelDbfs, before: earlier, after: later }, scatterFactor);
}

type TwoSides = Pick<PartialTrial, 'partialNumber' | 'levelDbfs' | 'before' | 'after'>;

function judged(sides: TwoSides, scatterFactor: number): PartialTrial {
  const { before, after } = sides;
  const ratioChange = after.ratio - before.ratio;
  const scatter = (side: SideBeat) =>
    Math.hypot(scatterFactor * usualScatter(side.ratio), fewCyclesScatter(side.cycleCount)) / Math.sqrt(side.takeCount);
  const ratioChangeStandardUncertainty = Math.hypot(scatter(before), scatter(after));
  const hasRates = before.rateHz !== null && after.rateHz !== null;
  const rateChangeHz = hasRates ? after.rateHz - before.rateHz : null;
  const rateChangeStandardUncertaintyHz = hasRates
    ? Math.hypot(before.rateStandardUncertaintyHz ?? 0, after.rateStandardUncertaintyHz ?? 0)
    : null;
  const figures = { ratioChange, ratioChangeStandardUncertainty, rateChangeHz, rateChangeStandardUncertaintyHz };
  return { ...sides, ...figures, change: changeOf(sides, figures) };
}

type ChangeFigures = Pick<
  PartialTrial,
  'ratioChange' | 'ratioChangeStandardUncertainty' | 'rateChangeHz' | 'rateChangeStandardUncertaintyHz'
>;

function changeOf({ before, after }: TwoSides, figures: ChangeFigures): PartialTrial['change'] {
  const { ratioChange, ratioChangeStandardUncertainty, rateChangeHz, rateChangeStandardUncertaintyHz } = figures;
  const isOneSided = (before.rateHz === null) !== (after.rateHz === null);
  const sigmas = isOneSided ? SIGMAS_IF_GONE : SIGMAS;
  const isSure = Math.abs(ratioChange) > Math.max(LEAST_RATIO_CHANGE, sigmas * ratioChangeStandardUncertainty);
  if (isSure && ratioChange < 0) return after.ratio < NO_BEAT_RATIO ? 'stops' : 'weaker';
  if (isSure) return before.ratio < NO_BEAT_RATIO ? 'appears' : 'stronger';
  if (rateChangeHz === null || rateChangeStandardUncertaintyHz === null || before.rateHz === null) return 'none';
  const isOtherRate =
    Math.abs(rateChangeHz) >
    Math.max(SIGMAS * rateChangeStandardUncertaintyHz, LEAST_RATE_CHANGE_SHARE * before.rateHz);
  return isOtherRate ? 'other rate' : 'none';
}

/** Fewer beating partials than this, and one of them is much of what is heard. */
const LEAST_PARTIALS = 3;

/**
 * Only one of three or more beating partials changed, and one take a side says so. What is done at the bridge changes the beats of one
 * cause together, and one take in some hundred misses the beat of a partial: that is not yet a change of the string.
 */
export function isLoneChange(partials: readonly PartialTrial[]): boolean {
  const changed = partials.filter(({ change }) => change !== 'none');
  const [only] = changed;
  if (!only || changed.length > 1 || partials.length < LEAST_PARTIALS) return false;
  return Math.min(only.before.takeCount, only.after.takeCount) < 2;
}
