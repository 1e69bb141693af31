/** One take of one struck note, from samples to a reading. */
import { hzToCents, uncertaintyHzToCents } from '../../piano/cents.ts';
import { midiToHz, midiToName } from '../../piano/note.ts';
import type { NoNoteReason, NoteReading, PartialReading, StringPosition, TakeOutcome } from '../../piano/reading.ts';
import { judgeBeating } from './beatKind.ts';
import { beatsOf } from './beats.ts';
import { decayTimeS, decayTimesOf, lifeTimeS, partialEnergy } from './decay.ts';
import { findNote, type NoteSearch, nearerName } from './findNote.ts';
import { type InharmonicityFit, predictPartial } from './fitInharmonicity.ts';
import type { PartialFit } from './partialFit.ts';
import { hasSecondNote } from './secondNote.ts';
import { findRelease, findStrike, skipAfterStrikeS } from './takeBounds.ts';
import { judgeQuality } from './takeQuality.ts';
import { type Tone, trackPartials } from './trackPartials.ts';

export type MeasureOptions = {
  readonly pitchStandardHz: number;
  readonly stringPosition: StringPosition;
  /** The note, where it is known: it is measured and not looked for. */
  readonly midi?: number;
  /** A weak hint: the note that a walk up the compass would bring next. It never outweighs the sound. */
  readonly expectedMidi?: number;
  /** Index of the strike in `samples`, where the caller knows it. */
  readonly onsetIndex?: number;
  /** Time of samples[0] in the file or stream, for `onsetS`. */
  readonly startS?: number;
};

/** Longer than this, a take tells nothing more about its pitch. */
const LONGEST_ANALYSED_S = 8;
/** The comb of partials has to explain at least this much, or there is no note. */
const LEAST_COMB_SCORE = 0.06;
/** Weaker or less certain than this, partial 1 is taken from the fit over all partials. */
const LEAST_PARTIAL1_SNR_DB = 10;
const MOST_PARTIAL1_SIGMA_CENTS = 1;

/**
 * Measures one take: which note, its partials, F0 and B, decay, beats, quality.
 *
 * The steps and their sources stand in the files named after them. Frequencies are what sounded after the blow's own noise, so a
 * hard blow's first sharpness is left out. Not for two notes at once: that is said, not separated.
 *
 * @param samples mono, ±1 full scale, ideally with up to 0.3 s before the strike
 * @returns the reading, or a reason from a closed list why there is none
 * @throws {RangeError} if the sample rate or an option is out of range
 */
export function measureTake(samples: Float32Array, sampleRateHz: number, options: MeasureOptions): TakeOutcome {
  requireRange('sampleRateHz', sampleRateHz, 8000, 400_000);
  requireRange('pitchStandardHz', options.pitchStandardHz, 300, 600);
  if (options.midi !== undefined) requireWhole('midi', options.midi, 12, 120);
  if (options.onsetIndex !== undefined) requireWhole('onsetIndex', options.onsetIndex, 0, samples.length);
  if (options.startS !== undefined) requireRange('startS', options.startS, 0, 1e9);
  const onsetIndex = options.onsetIndex ?? findStrike(samples, sampleRateHz);
  if (onsetIndex === undefined) return nothing('silence', 'the recording is silent');
  const longest = Math.min(samples.length, onsetIndex + Math.round(LONGEST_ANALYSED_S * sampleRateHz));
  const endIndex = findRelease(samples, onsetIndex, longest, sampleRateHz);
  if (endIndex - onsetIndex < 0.12 * sampleRateHz) {
    const lengthS = ((endIndex - onsetIndex) / sampleRateHz).toFixed(2);
    return nothing('too-short', `only ${lengthS} s follow the strike; hold the note longer`);
  }
  const search = findNote({ ...options, samples, sampleRateHz, onsetIndex, endIndex });
  const take = { samples, sampleRateHz, onsetIndex, endIndex, options };
  return measureNote(take, search);
}

type TakeFacts = {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
  readonly onsetIndex: number;
  readonly endIndex: number;
  readonly options: MeasureOptions;
};

function measureNote(take: TakeFacts, search: NoteSearch): TakeOutcome {
  const candidate = search.candidates[0];
  if (!candidate || candidate.comb.score < LEAST_COMB_SCORE) {
    return nothing('no-pitch', 'no partials of a piano note stand out of the noise');
  }
  const skip = Math.round(skipAfterStrikeS(candidate.f0Hz) * take.sampleRateHz);
  const tone = trackPartials({ ...take, startIndex: take.onsetIndex + skip, candidate, peaks: search.peaks });
  if (tone.partials.length === 0) {
    return nothing('no-pitch', `nothing steady sounds where the partials of ${midiToName(candidate.midi)} would be`);
  }
  const reading = readingOf(take, search, nameOf(take, candidate.midi, tone), tone.partials, tone.fit);
  return take.options.midi === undefined ? unlessNoNote(reading) : { found: true, reading };
}

/**
 * The note given, or the expected one; else the candidate or the neighbour whose usual pitch the first partial is nearer to. Where that
 * partial is neither measured nor fitted, a higher one divided by its number may lie half a semitone off in the treble: the comb has its way.
 */
function nameOf({ options }: TakeFacts, midi: number, { partials, fit }: Tone): number {
  if (options.midi !== undefined || options.expectedMidi === midi) return midi;
  if (!fit && partials[0]?.partialNumber !== 1) return midi;
  return nearerName(midi, hzToCents(firstPartial(partials, fit).hz, midiToHz(midi, options.pitchStandardHz)));
}

/** What is no struck string at all gives no reading, unless the caller said that it is one. */
function unlessNoNote(reading: NoteReading): TakeOutcome {
  const { faults } = reading.quality;
  const near = `nearest to ${midiToName(reading.midi)}`;
  if (faults.includes('speech')) return nothing('speech', `its pitch does not hold as a string's does (${near})`);
  if (faults.includes('knock')) {
    return nothing('knock', `it dies within ${reading.lifeTimeS?.toFixed(1)} s, too fast for a free string (${near})`);
  }
  return { found: true, reading };
}

function readingOf(
  take: TakeFacts,
  search: NoteSearch,
  midi: number,
  partials: readonly PartialFit[],
  fit: InharmonicityFit | undefined,
): NoteReading {
  const { sampleRateHz, onsetIndex, endIndex, options } = take;
  const first = firstPartial(partials, fit);
  const judgement = judgeBeating(partials, options.stringPosition);
  const nominalHz = midiToHz(midi, options.pitchStandardHz);
  const offsetCents = hzToCents(first.hz, nominalHz);
  const candidate = search.candidates[0]!;
  const quality = judgeQuality({
    ...take,
    midi,
    partials,
    isAnotherNote: isAnotherNote(search),
    hasSecondNote: hasSecondNote(search.peaks, midi, fit ?? candidate, search.resolutionHz, partials),
    steadyShare: steadyShare(partials),
    lifeTimeS: lifeTimeS(partials),
  });
  return {
    midi,
    stringPosition: options.stringPosition,
    onsetS: (options.startS ?? 0) + onsetIndex / sampleRateHz,
    durationS: (endIndex - onsetIndex) / sampleRateHz,
    pitchStandardHz: options.pitchStandardHz,
    partial1Hz: first.hz,
    partial1StandardUncertaintyHz: first.standardUncertaintyHz,
    partial1Source: first.source,
    f0Hz: fit?.f0Hz ?? null,
    f0StandardUncertaintyHz: fit?.f0StandardUncertaintyHz ?? null,
    inharmonicityB: fit?.inharmonicityB ?? null,
    inharmonicityBStandardUncertainty: fit?.inharmonicityBStandardUncertainty ?? null,
    offsetCents,
    offsetStandardUncertaintyCents: uncertaintyHzToCents(first.standardUncertaintyHz, first.hz),
    partials: partials.map(partialReading),
    beating: judgement.beating,
    unisonStringsCents:
      judgement.stringOffsetsCents.length > 0
        ? [offsetCents, ...judgement.stringOffsetsCents.map((offset) => offsetCents + offset)].sort((a, b) => a - b)
        : null,
    lifeTimeS: lifeTimeS(partials),
    quality,
  };
}

/** Another note's comb that scores this many times better than the named note's is the true one. */
const FAR_BETTER = 1.5;

function isAnotherNote(search: NoteSearch): boolean {
  const [taken, ...others] = search.candidates;
  return others.some((other) => other.score > FAR_BETTER * taken!.score);
}

function firstPartial(partials: readonly PartialFit[], fit: InharmonicityFit | undefined) {
  const measured = partials.find((partial) => partial.partialNumber === 1);
  const isGood =
    measured !== undefined &&
    measured.snrDb >= LEAST_PARTIAL1_SNR_DB &&
    uncertaintyHzToCents(measured.standardUncertaintyHz, measured.hz) <= MOST_PARTIAL1_SIGMA_CENTS;
  if (isGood || !fit) {
    const source = measured ?? partials[0]!;
    const hz = source.hz / source.partialNumber;
    const standardUncertaintyHz = source.standardUncertaintyHz / source.partialNumber;
    return { hz, standardUncertaintyHz, source: measured ? ('measured' as const) : ('fitted' as const) };
  }
  return { ...predictPartial(fit, 1), source: 'fitted' as const };
}

function partialReading(partial: PartialFit): PartialReading {
  const total = partial.components.reduce((sum, component) => sum + component.amplitude ** 2, 0);
  return {
    partialNumber: partial.partialNumber,
    frequencyHz: partial.hz,
    frequencyStandardUncertaintyHz: partial.standardUncertaintyHz,
    levelDbfs: 10 * Math.log10(total),
    snrDb: partial.snrDb,
    ...decayTimesOf(partial),
    beats: beatsOf(partial),
    components: partial.components.map((component) => ({
      frequencyHz: component.hz,
      frequencyStandardUncertaintyHz: component.standardUncertaintyHz,
      levelDbfs: 20 * Math.log10(component.amplitude),
      decayTimeS: decayTimeS(component),
    })),
  };
}

/** Energy-weighted share of the partials' bands that decaying tones account for. */
function steadyShare(partials: readonly PartialFit[]): number {
  let total = 0;
  let steady = 0;
  for (const partial of partials) {
    const energy = partialEnergy(partial);
    total += energy;
    steady += energy * partial.explainedShare;
  }
  return total > 0 ? steady / total : 0;
}

function nothing(reason: NoNoteReason, detail: string): TakeOutcome {
  return { found: false, reason, detail };
}

function requireWhole(name: string, value: number, low: number, high: number): void {
  requireRange(name, value, low, high);
  if (!Number.isInteger(value)) throw new RangeError(`${name} must be a whole number, got ${value}`);
}

function requireRange(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high))
    throw new RangeError(`${name} must be between ${low} and ${high}, got ${value}`);
}
