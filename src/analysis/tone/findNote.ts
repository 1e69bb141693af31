/** Which note was struck, and roughly its f0 and B: the comb of partials decides among all notes. */
import { centsToHz, hzToCents } from '../../piano/cents.ts';
import { hzToMidi, midiToHz } from '../../piano/note.ts';
import { noiseFloorDb, type SpectralPeak, type Spectrum, spectralPeaks, spectrumOf } from '../signal/spectralPeaks.ts';
import { coarsePitches } from './coarsePitch.ts';
import { type CombScore, combScore, teethOf } from './combScore.ts';
import { type SalienceMap, salienceMap } from './salienceMap.ts';
import { typicalInharmonicity } from './typicalInharmonicity.ts';

export type NoteCandidate = {
  readonly midi: number;
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  readonly comb: CombScore;
  /** The comb's score with the weak hints (estimator, expectation) added. */
  readonly score: number;
};

export type NoteSearch = {
  /** One per note, best first; a note that the caller named comes before the best. */
  readonly candidates: readonly NoteCandidate[];
  readonly peaks: readonly SpectralPeak[];
  /** How far a peak may lie from its tone on account of the spectrum's resolution. */
  readonly resolutionHz: number;
};

export type NoteSearchRequest = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly onsetIndex: number;
  readonly endIndex: number;
  readonly pitchStandardHz: number;
  readonly midi?: number | undefined;
  readonly expectedMidi?: number | undefined;
};

/** Notes searched: an 88-note piano and a semitone around, since an instrument may stand far off its pitch. */
const LOWEST_MIDI = 21;
const HIGHEST_MIDI = 108;

/** Below this the long spectrum is used (resolution), above it the short one (the tone soon dies). */
const LONG_BELOW_MIDI = 72;
const LONG_S = 0.75;
const SHORT_S = 0.22;

/** Hints weigh less than the difference that one wrongly assigned partial makes. */
const ESTIMATOR_HINT = 0.03;
const EXPECTATION_HINT = 0.04;

export function findNote(request: NoteSearchRequest): NoteSearch {
  const long = analyse(request, 0.045, LONG_S, 25);
  const short = analyse(request, 0.012, SHORT_S, 60);
  const hints = coarsePitches(request.samples, request.onsetIndex, request.sampleRateHz).map((hz) =>
    Math.round(hzToMidi(hz, request.pitchStandardHz)),
  );
  const notes = Array.from({ length: HIGHEST_MIDI - LOWEST_MIDI + 1 }, (_, i) => LOWEST_MIDI + i);
  const ranked = notes
    .map((midi) => bestComb(midi < LONG_BELOW_MIDI ? long.map : short.map, midi, request.pitchStandardHz))
    .map((candidate) => ({ ...candidate, score: candidate.comb.score + hintFor(candidate.midi, hints, request) }))
    .sort((a, b) => b.score - a.score);
  const candidates = givenFirst(ranked, request.midi);
  const chosenMidi = candidates[0]?.midi ?? 60;
  const { peaks, resolutionHz } = chosenMidi < LONG_BELOW_MIDI ? long : short;
  return { candidates, peaks, resolutionHz };
}

/** A note that the caller names comes first, whatever scored best. */
function givenFirst(ranked: readonly NoteCandidate[], midi: number | undefined): readonly NoteCandidate[] {
  const given = ranked.find((candidate) => candidate.midi === midi);
  return given ? [given, ...ranked.filter((candidate) => candidate !== given)] : ranked;
}

function hintFor(midi: number, hints: readonly number[], request: NoteSearchRequest): number {
  return (hints.includes(midi) ? ESTIMATOR_HINT : 0) + (request.expectedMidi === midi ? EXPECTATION_HINT : 0);
}

/** Peaks that stand out after the strike, those that rang before it at about the same level left out. */
function analyse(request: NoteSearchRequest, delayS: number, lengthS: number, lowestHz: number) {
  const { samples, sampleRateHz, onsetIndex } = request;
  const start = Math.min(samples.length - 64, onsetIndex + Math.round(delayS * sampleRateHz));
  const end = Math.max(start + 64, Math.min(request.endIndex, start + Math.round(lengthS * sampleRateHz)));
  const spectrum = spectrumOf(samples, start, Math.min(end, samples.length), sampleRateHz);
  const floor = noiseFloorDb(spectrum, lengthS > 0.5 ? 120 : 400);
  const highestHz = Math.min(0.46 * sampleRateHz, 14000);
  const peaks = spectralPeaks(spectrum, floor, { lowestHz, highestHz, leastSnrDb: 9, most: 150 });
  const before = spectrumBefore(request, lengthS);
  const fresh = before ? peaks.filter((peak) => !rangBefore(peak, before)) : peaks;
  const resolutionHz = (0.6 * sampleRateHz) / (end - start);
  return { peaks: fresh, resolutionHz, map: salienceMap(fresh, highestHz, resolutionHz) };
}

/** What sounded before the strike; undefined where too little of it was recorded. */
function spectrumBefore(request: NoteSearchRequest, lengthS: number): Spectrum | undefined {
  const end = request.onsetIndex - Math.round(0.01 * request.sampleRateHz);
  const start = Math.max(0, end - Math.round(lengthS * request.sampleRateHz));
  if (end - start < 0.08 * request.sampleRateHz) return undefined;
  return spectrumOf(request.samples, start, end, request.sampleRateHz);
}

/** A peak that stood there before, no more than this much lower, is another string's. */
const LEAST_RISE_DB = 4;

function rangBefore(peak: SpectralPeak, before: Spectrum): boolean {
  const bin = Math.round(peak.hz / before.binHz);
  let level = -300;
  for (let k = Math.max(0, bin - 2); k <= Math.min(before.levelDb.length - 1, bin + 2); k++) {
    level = Math.max(level, before.levelDb[k] ?? -300);
  }
  return level > peak.levelDbfs - LEAST_RISE_DB;
}

/**
 * Where a note's pitch may lie against equal temperament, in steps of 4 cents: half a semitone, further on the side to which a
 * stretched tuning leans. The first and the last note of the compass have no neighbour on one side and may stray further there.
 */
function detunesCents(midi: number): number[] {
  const stretch = typicalStretchCents(midi);
  const low = Math.min(0, 0.8 * stretch) - (midi === LOWEST_MIDI ? 110 : 52);
  const high = Math.max(0, 0.8 * stretch) + (midi === HIGHEST_MIDI ? 110 : 52);
  return Array.from({ length: Math.floor((high - low) / 4) + 1 }, (_, i) => low + 4 * i);
}

/** A comb scores this much less 70 cents from where its note usually stands: two names for one pitch never tie. */
const FAR_OFF_COST = 0.05;

/** Below the first note and above the last there is no other to be taken for. */
function hasNoRival(midi: number, detuneCents: number): boolean {
  return (midi === HIGHEST_MIDI && detuneCents > 0) || (midi === LOWEST_MIDI && detuneCents < 0);
}

/**
 * How far tuned pianos stand from equal temperament at both ends of the compass: about −20 cents at A0 and +25 at C8, little in
 * between (O. L. Railsback, J. Acoust. Soc. Am. 9 (1938) 274, for the shape; the two figures from memory, common practice).
 */
function typicalStretchCents(midi: number): number {
  if (midi < 45) return -20 * ((45 - midi) / 24) ** 2;
  return midi > 80 ? 25 * ((midi - 80) / 28) ** 2 : 0;
}

/** Single takes are named by where a note usually stands: a share of the stretch that tuned pianos have. */
function usualOffsetCents(midi: number): number {
  return 0.3 * typicalStretchCents(midi);
}

/**
 * The name for a first partial that turned out to lie `offsetCents` from `midi`: the neighbour's, where that one's usual place is
 * nearer. Combs of two neighbours' names meet half-way and may score alike; the measured partial then decides.
 */
export function nearerName(midi: number, offsetCents: number): number {
  const step = Math.sign(offsetCents - usualOffsetCents(midi));
  const other = midi + step;
  if (other < LOWEST_MIDI || other > HIGHEST_MIDI) return midi;
  const own = Math.abs(offsetCents - usualOffsetCents(midi));
  return Math.abs(offsetCents - 100 * step - usualOffsetCents(other)) < own ? other : midi;
}

const B_FACTORS = [0.25, 0.4, 0.6, 0.8, 1, 1.3, 1.7, 2.3, 3];

/** The best-scoring f0 and B of one note, within half a semitone and the plausible range of inharmonicity. */
function bestComb(map: SalienceMap, midi: number, pitchStandardHz: number): Omit<NoteCandidate, 'score'> {
  const typical = typicalInharmonicity(midi);
  const nominalHz = midiToHz(midi, pitchStandardHz);
  const detunes = detunesCents(midi);
  const usual = usualOffsetCents(midi);
  let best: Omit<NoteCandidate, 'score'> | undefined;
  for (const factor of B_FACTORS) {
    const inharmonicityB = typical * factor;
    const unlikely = 0.01 * Math.log(factor) ** 2;
    // The note's pitch is its first partial's, which stands √(1 + B) above f0.
    const middleHz = nominalHz / Math.sqrt(1 + inharmonicityB);
    const teeth = teethOf(middleHz, inharmonicityB);
    for (const detune of detunes) {
      const comb = combScore(map, teeth, middleHz, detune);
      const far = hasNoRival(midi, detune) ? 0 : FAR_OFF_COST * Math.min(1, ((detune - usual) / 70) ** 2);
      const score = comb.score - unlikely - far;
      if (best && score <= best.comb.score) continue;
      best = { midi, f0Hz: centsToHz(detune, middleHz), inharmonicityB, comb: { ...comb, score } };
    }
  }
  if (!best) throw new RangeError('no comb was scored');
  return best;
}

/** The candidate's first partial against equal temperament. */
export function offsetCentsOf(candidate: NoteCandidate, pitchStandardHz: number): number {
  const partial1Hz = candidate.f0Hz * Math.sqrt(1 + candidate.inharmonicityB);
  return hzToCents(partial1Hz, midiToHz(candidate.midi, pitchStandardHz));
}
