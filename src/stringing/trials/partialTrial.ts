/**
 * One partial before and after something was done to its string: what its beat was, what it is, and whether the difference is more
 * than strikes differ by.
 */
import type { NoteReading, PartialReading } from '../../piano/reading.ts';
import { deepestBeat, depthToRatio, heardS, wouldShow } from '../falseBeats/beatStrength.ts';

/** A partial's beat in one take. `absent`: it would have shown. `unseen`: the partial was not measured, or too weak to tell. */
export type TakeBeat =
  | {
      readonly kind: 'beat';
      readonly ratio: number;
      readonly rateHz: number;
      readonly rateStandardUncertaintyHz: number;
      /** Beats that fit into what was heard of the partial. */
      readonly cycleCount: number;
    }
  | { readonly kind: 'absent' }
  | { readonly kind: 'unseen' };

/** What the beats of several takes are together. */
export type SideBeat = {
  /** Mean amplitude ratio of the beat's components; 0 where it is absent. */
  readonly ratio: number;
  /** Null where no take has the beat. */
  readonly rateHz: number | null;
  readonly rateStandardUncertaintyHz: number | null;
  /** Takes that could tell. */
  readonly takeCount: number;
  /** Fewest beats that fit into a take in which the beat is; null where no take has it. */
  readonly cycleCount: number | null;
};

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

/**
 * What one strike and the next differ by in a beat's ratio: a share of the ratio and a floor. Chosen, in want of a published figure; it
 * counts as much as three repeats, so that repeated takes soon replace it.
 */
const USUAL_SCATTER_SHARE = 0.15;
const USUAL_SCATTER_FLOOR = 0.035;
const USUAL_WORTH = 3;
/** And in its rate, besides the fit's own uncertainty. Chosen. */
const RATE_SCATTER_SHARE = 0.03;
const RATE_SCATTER_FLOOR_HZ = 0.03;
/** Depth and rate of a beat of which hardly one fits into the tone are a guess of the fit: in ratio, and as a share of the rate, at one cycle. Chosen. */
const FEW_CYCLES = 0.15;
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
    sideBeat(takes.map((take) => takeBeat(take, partialNumber, reference))),
  );
  if (!earlier || !later || earlier.takeCount === 0 || later.takeCount === 0) return undefined;
  const levelDbfs = Math.max(
    ...[...before, ...after].flatMap((take) => partialOf(take, partialNumber)?.levelDbfs ?? []),
  );
  return judged({ partialNumber, levelDbfs, before: earlier, after: later }, scatterFactor);
}

function partialOf(take: NoteReading, partialNumber: number): PartialReading | undefined {
  return take.partials.find((partial) => partial.partialNumber === partialNumber);
}

type Reference = { readonly rateHz: number; readonly ratio: number };

/** The deepest beat of the partial in any take: what has to be seen, or seen to be gone. */
function referenceBeat(partialNumber: number, takes: readonly NoteReading[]): Reference | undefined {
  const beats = takes.flatMap((take) => {
    const partial = partialOf(take, partialNumber);
    return (partial && deepestBeat(partial)) ?? [];
  });
  const deepest = beats.reduce<(typeof beats)[number] | undefined>(
    (a, b) => (a && a.depthDb >= b.depthDb ? a : b),
    undefined,
  );
  return deepest && { rateHz: deepest.rateHz, ratio: depthToRatio(deepest.depthDb) };
}

function takeBeat(take: NoteReading, partialNumber: number, { rateHz, ratio }: Reference): TakeBeat {
  const partial = partialOf(take, partialNumber);
  if (!partial) return { kind: 'unseen' };
  const beat = deepestBeat(partial);
  if (beat) {
    const { depthDb, rateStandardUncertaintyHz } = beat;
    const cycleCount = beat.rateHz * heardS(partial, take.durationS);
    return { kind: 'beat', ratio: depthToRatio(depthDb), rateHz: beat.rateHz, rateStandardUncertaintyHz, cycleCount };
  }
  // Half as deep is what it may have become without having gone.
  return wouldShow(partial, take.durationS, rateHz, ratio / 2) ? { kind: 'absent' } : { kind: 'unseen' };
}

function sideBeat(takes: readonly TakeBeat[]): SideBeat {
  const told = takes.filter(({ kind }) => kind !== 'unseen');
  const beats = told.flatMap((take) => (take.kind === 'beat' ? take : []));
  const weights = beats.map(
    ({ rateHz, rateStandardUncertaintyHz, cycleCount }) =>
      1 / (rateStandardUncertaintyHz ** 2 + rateScatterHz(rateHz, cycleCount) ** 2),
  );
  const weightSum = weights.reduce((sum, weight) => sum + weight, 0);
  const rateSum = beats.reduce((sum, { rateHz }, index) => sum + rateHz * (weights[index] ?? 0), 0);
  return {
    ratio: told.length === 0 ? 0 : beats.reduce((sum, { ratio }) => sum + ratio, 0) / told.length,
    rateHz: beats.length === 0 ? null : rateSum / weightSum,
    rateStandardUncertaintyHz: beats.length === 0 ? null : 1 / Math.sqrt(weightSum),
    takeCount: told.length,
    cycleCount: beats.length === 0 ? null : Math.min(...beats.map(({ cycleCount }) => cycleCount)),
  };
}

function rateScatterHz(rateHz: number, cycleCount: number): number {
  return Math.hypot(RATE_SCATTER_SHARE * rateHz, RATE_SCATTER_FLOOR_HZ, FEW_CYCLES * (rateHz / cycleCount ** 2));
}

function usualScatter(ratio: number): number {
  return Math.hypot(USUAL_SCATTER_SHARE * ratio, USUAL_SCATTER_FLOOR);
}

function fewCyclesScatter(cycleCount: number | null): number {
  return cycleCount === null ? 0 : FEW_CYCLES / cycleCount ** 2;
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

/**
 * What repeated takes of one side differ by in their beats' ratios, over the usual: 1 where nothing was repeated, less where they
 * agree better, more where they disagree.
 */
export function repeatScatter(sides: readonly (readonly NoteReading[])[]): number {
  let squares = USUAL_WORTH;
  let freedom = USUAL_WORTH;
  for (const takes of sides) {
    for (const partialNumber of new Set(
      takes.flatMap(({ partials }) => partials.map((partial) => partial.partialNumber)),
    )) {
      const ratios = takes.flatMap((take) => beatRatio(take, partialNumber));
      if (ratios.length < 2) continue;
      const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / ratios.length;
      squares += ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0) / usualScatter(mean) ** 2;
      freedom += ratios.length - 1;
    }
  }
  return Math.max(LEAST_FACTOR, Math.sqrt(squares / freedom));
}

/** However well takes agree: a few of them may agree by chance. */
const LEAST_FACTOR = 0.5;

function beatRatio(take: NoteReading, partialNumber: number): number[] {
  const partial = partialOf(take, partialNumber);
  const beat = partial && deepestBeat(partial);
  return beat ? [depthToRatio(beat.depthDb)] : [];
}
