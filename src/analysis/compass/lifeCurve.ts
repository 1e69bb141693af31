/**
 * How long notes live along the compass, and which die much sooner than their neighbours.
 *
 * Model: log of the life time (time for 60 dB) is a straight line in the MIDI number, with a slow departure of few degrees of
 * freedom, and a spread from note to note that is fitted with it. Robust, so that a few dead notes do not pull the curve down.
 * A strong spread is real: the ends of the soundboard, the strength of the blow and how well the unison is tuned all move a note's
 * life, so only a note that lives less than half as long as the curve says is called weak, and only where chance does not
 * explain it. Source: common practice (robust regression of the logarithm of a decay time).
 */
import type { StringPosition } from '../../piano/reading.ts';
import type { CurveModel } from './curveModel.ts';
import { type CurveFit, curveValue, fitRobustCurve } from './robustCurve.ts';
import { bumpCentres, bumpHeights } from './slowDeparture.ts';
import { beyondChance, chanceBeyond } from './standsOut.ts';

export type MeasuredLife = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** Time for 60 dB. */
  readonly lifeTimeS: number;
};

export type LifeNote = MeasuredLife & {
  /** Life over what the curve that the other notes make says. */
  readonly ratioToCurve: number;
  readonly departureInSigmas: number;
  readonly isWeak: boolean;
};

export type LifeCurve = {
  /** Plain data that lifeAt reads. */
  readonly parameters: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Spread of the log of the life time about the curve: 0.3 is about 30 %. */
  readonly spread: number;
  /** In the order given. */
  readonly notes: readonly LifeNote[];
};

export type LifeAt = {
  readonly lifeTimeS: number;
  /** Of the curve's logarithm: 0.1 is about 10 % of the life time. */
  readonly logStandardUncertainty: number;
};

/** Fewer notes than this give no curve. Chosen. */
const LEAST_LIFE_NOTES = 8;
/** A weak note lives less than this share of what the curve says. Chosen: a halved life is plain to the ear; a smaller step is in the usual spread. */
const WEAK_SHARE = 0.5;
/** Of the notes called weak, no more than this share are called by chance on average. Common practice. */
const WEAK_FALSE_SHARE = 0.05;

/**
 * The line's height and slope: 8 s at C4, halved every 14 notes, loosely (from memory; 1 to 100 dB/s over a piano's compass).
 * The slow departure takes about a factor of 1.4 either way.
 */
const LINE = { centreMidi: 60, height: Math.log(8), heightSigma: 1.5, slope: -Math.LN2 / 14, slopeSigma: 0.03 };
const BUMPS = { spacingNotes: 14, lowestMidi: 21, highestMidi: 108 };
const BUMP_CENTRES = bumpCentres(BUMPS);
const BUMP_SIGMA = 0.25;
/** From note to note, a quarter to a half (measured by us: 0.36 on the open recordings of a concert grand, with its unisons open). */
const USUAL_SPREAD = 0.3;

const LIFE_MODEL: CurveModel = {
  at: (midi, parameters) => {
    const gradient = [1, midi - LINE.centreMidi, ...bumpHeights(BUMP_CENTRES, BUMPS.spacingNotes, midi)];
    return { value: gradient.reduce((sum, height, index) => sum + height * (parameters[index] ?? 0), 0), gradient };
  },
  priors: [
    { mean: LINE.height, sigma: LINE.heightSigma },
    { mean: LINE.slope, sigma: LINE.slopeSigma },
    ...BUMP_CENTRES.map(() => ({ mean: 0, sigma: BUMP_SIGMA })),
  ],
  spread: { usual: USUAL_SPREAD, worthNotes: 4, groupCount: 1, groupOf: () => 0, groupWorthNotes: 0 },
};

/**
 * @param measured notes whose life was measured, of takes that can be used; the kept one where a string was taken several times
 * @returns null with fewer than eight different notes, or where the fit does not settle
 * @throws {RangeError} if a life time is not a finite number above zero
 */
export function fitLifeCurve(measured: readonly MeasuredLife[]): LifeCurve | null {
  const figures = measured.map(({ midi, lifeTimeS }) => {
    if (!(lifeTimeS > 0)) throw new RangeError(`lifeTimeS must be above zero, got ${lifeTimeS} at ${midi}`);
    return { midi, value: Math.log(lifeTimeS), standardUncertainty: 0 };
  });
  if (new Set(figures.map(({ midi }) => midi)).size < LEAST_LIFE_NOTES) return null;
  const fit = fitRobustCurve(LIFE_MODEL, figures);
  if (!fit) return null;
  const { parameters, covariance, spreads } = fit;
  return { parameters, covariance, spread: spreads[0] ?? 0, notes: judgedNotes(measured, fit) };
}

/** What the curve says of a note, measured or not. @throws {RangeError} if midi is not finite */
export function lifeAt(curve: LifeCurve, midi: number): LifeAt {
  if (!Number.isFinite(midi)) throw new RangeError(`midi must be finite, got ${midi}`);
  const { value, standardUncertainty } = curveValue(LIFE_MODEL, curve, midi);
  return { lifeTimeS: Math.exp(value), logStandardUncertainty: standardUncertainty };
}

function judgedNotes(measured: readonly MeasuredLife[], fit: CurveFit): LifeNote[] {
  const ratios = fit.departures.map(({ departure, standardUncertainty }) => departure / standardUncertainty);
  const chances = ratios.map((ratio) => (ratio < 0 ? chanceBeyond(-ratio, fit.freedom) : 1));
  const isRare = beyondChance(chances, WEAK_FALSE_SHARE);
  return measured.map((note, index) => {
    const ratioToCurve = Math.exp(fit.departures[index]?.departure ?? 0);
    const isWeak = (isRare[index] ?? false) && ratioToCurve < WEAK_SHARE;
    return { ...note, ratioToCurve, departureInSigmas: ratios[index] ?? 0, isWeak };
  });
}
