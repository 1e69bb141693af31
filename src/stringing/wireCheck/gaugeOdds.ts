/**
 * Which size of wire a string has, from how far its inharmonicity stands off its neighbours'. At a given length and pitch B goes with
 * d², so each other size predicts a departure of its own. Bayes' rule over: the stated size, the sizes within two numbers of it, and
 * something else altogether (a wrong take, a wrong length, rust), which departs anyhow. Errors follow Student's t.
 */
import { gaugesOf, type WireGauge } from '../../piano/wireGauge.ts';
import { type DiameterRoom, hasRoom } from './diameterRun.ts';

export type StringEvidence = {
  readonly statedDiameterMm: number;
  /** log of measured over expected B, less what the other strings have in common. */
  readonly departure: number;
  readonly standardUncertainty: number;
  readonly freedom: number;
  readonly room: DiameterRoom;
};

export type GaugeOdds = {
  /** That the stated size is right. */
  readonly statedProbability: number;
  readonly otherProbability: number;
  /** The likeliest other size; null where no size lies near. */
  readonly best: { readonly gauge: WireGauge; readonly probability: number } | null;
};

/**
 * Before anything was measured. Chosen: of strings whose stated size fits its neighbours one in twenty-five has another wire; of those
 * whose size does not fit, six in ten. Larger ones find more wrong wire and accuse more right wire.
 */
export const WRONG_PRIOR = 0.04;
export const WRONG_PRIOR_OUT_OF_RUN = 0.6;
const OTHER_PRIOR = 0.002;
/** Of a size that fits the neighbours, against one that does not, where the stated one does not. */
const FITTING_WEIGHT = 6;
/** log B of something else altogether is anywhere within a factor of about two. */
const OTHER_SPREAD = 0.7;
const REACH_NUMBERS = 2;
/** Sizes nearer than this to the stated one are the stated one. */
const SAME_MM = 0.012;

export function gaugeOdds(evidence: StringEvidence): GaugeOdds {
  const { statedDiameterMm, room } = evidence;
  const isOutOfRun = !hasRoom(room, statedDiameterMm);
  const wrong = isOutOfRun ? WRONG_PRIOR_OUT_OF_RUN : WRONG_PRIOR;
  const gauges = nearbySizes(statedDiameterMm);
  const weights = gauges.map(({ diameterMm }) => (hasRoom(room, diameterMm) ? FITTING_WEIGHT : 1));
  const weightSum = weights.reduce((sum, weight) => sum + weight, 0);
  const sizes = gauges.map((gauge, index) => ({
    gauge,
    score:
      ((wrong * (weights[index] ?? 0)) / weightSum) *
      likelihood(evidence, 2 * Math.log(gauge.diameterMm / statedDiameterMm)),
  }));
  const stated = (1 - wrong - OTHER_PRIOR) * likelihood(evidence, 0);
  const other = OTHER_PRIOR * density(evidence.departure, Math.hypot(OTHER_SPREAD, evidence.standardUncertainty), 4);
  const sum = sizes.reduce((total, { score }) => total + score, stated + other);
  const best = sizes.reduce<(typeof sizes)[number] | undefined>((a, b) => (a && a.score >= b.score ? a : b), undefined);
  return {
    statedProbability: stated / sum,
    otherProbability: other / sum,
    best: best ? { gauge: best.gauge, probability: best.score / sum } : null,
  };
}

/** Of the series that the stated size belongs to; of the metric one where it belongs to none. */
function nearbySizes(statedDiameterMm: number): WireGauge[] {
  const distance = (gauge: WireGauge) => Math.abs(gauge.diameterMm - statedDiameterMm);
  const nearest = (['metric', 'inch'] as const).map((series) =>
    gaugesOf(series).reduce((a, b) => (distance(b) < distance(a) ? b : a)),
  );
  const [own] = [...nearest].sort((a, b) => distance(a) - distance(b));
  if (!own) return [];
  return gaugesOf(own.series).filter(
    (gauge) => Math.abs(gauge.gaugeNumber - own.gaugeNumber) <= REACH_NUMBERS && distance(gauge) > SAME_MM,
  );
}

function likelihood({ departure, standardUncertainty, freedom }: StringEvidence, expected: number): number {
  return density(departure - expected, standardUncertainty, freedom);
}

/** Student's t, but for a factor that depends on the freedom alone and is near that of the normal law. */
function density(residual: number, scale: number, freedom: number): number {
  return (1 + (residual / scale) ** 2 / freedom) ** (-(freedom + 1) / 2) / scale;
}
