/**
 * Which sizes of wire the strings of a note have, from how far their inharmonicity stands off what the other notes have in common. At a
 * given length and pitch B goes with d², so each other size predicts a departure of its own.
 *
 * Bayes' rule over: the stated size on all strings; another size, within two numbers of it, on all of them (the schedule is wrong) or on
 * some (a wire is wrong: one length makes two strings); and something else altogether (a wrong take or length, rust), which departs
 * anyhow, on all strings or one. What the strings of a note have in common (its length, the curve through the other notes) errs for all
 * of them together, each reading for itself. Errors follow Student's t.
 */
import { gaugesOf, type WireGauge } from '../../piano/wireGauge.ts';
import { type DiameterRoom, hasRoom } from './diameterRun.ts';

export type NoteEvidence = {
  readonly statedDiameterMm: number;
  /** Of each string: log of measured over expected B, less what the other notes have in common. */
  readonly departures: readonly number[];
  /** Of each string's own reading, in log B. */
  readonly readingSigmas: readonly number[];
  /** Of what they have in common. */
  readonly commonSigma: number;
  readonly freedom: number;
  readonly room: DiameterRoom;
  /** Of notes whose stated size fits its neighbours: how many have another wire, or are stated wrongly, 0…1. */
  readonly wrongShare: number;
};

export type StringOdds = {
  /** That the stated size is right. */
  readonly statedProbability: number;
  readonly otherProbability: number;
  /** The likeliest other size; null where no size lies near. */
  readonly best: { readonly gauge: WireGauge; readonly probability: number } | null;
};

/** Of notes whose stated size does not fit its neighbours, before anything was measured: six in ten are stated wrongly. Chosen. */
const SLIP_PRIOR_OUT_OF_RUN = 0.6;
const OTHER_PRIOR = 0.002;
/** Of a size that fits the neighbours, against one that does not, where the stated one does not. */
const FITTING_WEIGHT = 6;
/** log B of something else altogether is anywhere within a factor of about two. */
const OTHER_SPREAD = 0.7;
const REACH_NUMBERS = 2;
/** Sizes nearer than this to the stated one are the stated one. */
const SAME_MM = 0.012;

/** What may be so: which strings depart, by what, and how likely that is with the evidence (up to a factor). */
type Case = { readonly strings: readonly number[]; readonly gauge: WireGauge | null; readonly score: number };

/** For each string of the note, in the order given. */
export function noteOdds(evidence: NoteEvidence): StringOdds[] {
  const cases = casesOf(evidence);
  const sum = cases.reduce((total, { score }) => total + score, 0);
  return evidence.departures.map((_, index) => {
    const wrong = cases.filter(({ strings }) => strings.includes(index));
    const bySize = new Map<WireGauge, number>();
    for (const { gauge, score } of wrong) if (gauge) bySize.set(gauge, (bySize.get(gauge) ?? 0) + score / sum);
    const other = wrong.reduce((total, { gauge, score }) => total + (gauge ? 0 : score), 0);
    const best = [...bySize].reduce<[WireGauge, number] | undefined>((a, b) => (a && a[1] >= b[1] ? a : b), undefined);
    return {
      statedProbability: cases.reduce((total, one) => total + (one.strings.includes(index) ? 0 : one.score), 0) / sum,
      otherProbability: other / sum,
      best: best ? { gauge: best[0], probability: best[1] } : null,
    };
  });
}

function casesOf(evidence: NoteEvidence): Case[] {
  const { departures, statedDiameterMm, room } = evidence;
  // Slips of the pen and wrong wires are as frequent as each other, for all that is known.
  const wirePrior = evidence.wrongShare / 2;
  const slipPrior = hasRoom(room, statedDiameterMm) ? wirePrior : SLIP_PRIOR_OUT_OF_RUN;
  const all = departures.map((_, index) => index);
  const some = all.length === 1 ? [all] : subsetsOf(all);
  const sizes = weightedSizes(statedDiameterMm, room);
  const sized = sizes.flatMap(({ gauge, slipShare, wireShare }): Case[] => {
    const step = 2 * Math.log(gauge.diameterMm / statedDiameterMm);
    const shifted = (strings: readonly number[], prior: number): Case => ({
      strings,
      gauge,
      score: prior * likelihood(evidence, (index) => (strings.includes(index) ? step : 0)),
    });
    return [
      shifted(all, slipPrior * slipShare),
      ...some.map((strings) => shifted(strings, (wirePrior * wireShare) / some.length)),
    ];
  });
  const stated = { strings: [], gauge: null, score: (1 - slipPrior - wirePrior) * likelihood(evidence, () => 0) };
  return [stated, ...sized, ...otherCases(evidence, all)];
}

function otherCases(evidence: NoteEvidence, all: readonly number[]): Case[] {
  const { commonSigma, readingSigmas } = evidence;
  const whole = { ...evidence, commonSigma: Math.hypot(commonSigma, OTHER_SPREAD) };
  const ofNote = { strings: all, gauge: null, score: OTHER_PRIOR * likelihood(whole, () => 0) };
  if (all.length === 1) return [ofNote];
  const ofStrings = all.map((index) => {
    const sigmas = readingSigmas.map((sigma, at) => (at === index ? Math.hypot(sigma, OTHER_SPREAD) : sigma));
    return {
      strings: [index],
      gauge: null,
      score: OTHER_PRIOR * likelihood({ ...evidence, readingSigmas: sigmas }, () => 0),
    };
  });
  return [ofNote, ...ofStrings];
}

/** Some of the strings, neither none nor all. */
function subsetsOf(all: readonly number[]): number[][] {
  return Array.from({ length: 2 ** all.length - 2 }, (_, bits) => all.filter((index) => ((bits + 1) >> index) & 1));
}

function weightedSizes(statedDiameterMm: number, room: DiameterRoom) {
  const gauges = nearbySizes(statedDiameterMm);
  const weights = gauges.map(({ diameterMm }) => (hasRoom(room, diameterMm) ? FITTING_WEIGHT : 1));
  const weightSum = weights.reduce((sum, weight) => sum + weight, 0);
  return gauges.map((gauge, index) => ({
    gauge,
    slipShare: (weights[index] ?? 0) / weightSum,
    wireShare: 1 / gauges.length,
  }));
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

/**
 * Multivariate Student's t, but for a factor that depends on the freedom alone, with variances of the readings' own and one that all
 * strings share.
 */
function likelihood(evidence: NoteEvidence, shiftOf: (index: number) => number): number {
  const { departures, readingSigmas, commonSigma, freedom } = evidence;
  let [squares, pull, precision, logVariance] = [0, 0, 0, 0];
  for (const [index, departure] of departures.entries()) {
    const variance = (readingSigmas[index] ?? 0) ** 2;
    const residual = departure - shiftOf(index);
    squares += residual ** 2 / variance;
    pull += residual / variance;
    precision += 1 / variance;
    logVariance += Math.log(variance);
  }
  const shared = 1 + commonSigma ** 2 * precision;
  const distance = squares - (commonSigma ** 2 * pull ** 2) / shared;
  const tail = -0.5 * (freedom + departures.length) * Math.log1p(distance / freedom);
  return Math.exp(tail - 0.5 * (logVariance + Math.log(shared)));
}
