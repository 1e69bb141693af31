/**
 * Readings as the JSON documents of the command line and of the archive: open, self-explaining, units in the keys.
 * What could not be measured is `null`; a key that ends in `U` is the standard uncertainty of the key before it.
 */
import { midiToName } from '../piano/note.ts';
import type { Beating, BeatingKind, NoteReading, PartialReading, TakeFault, TakeQuality } from '../piano/reading.ts';

export type MeasureDocument = {
  readonly file: string;
  /** Null where the file could not be read. */
  readonly sampleRateHz: number | null;
  readonly pitchStandardHz: number;
  readonly readings: readonly ReadingDocument[];
  readonly warnings: readonly string[];
};

export type ReadingDocument = {
  readonly note: string;
  readonly midi: number;
  readonly string: number;
  readonly onsetS: number | null;
  readonly durationS: number | null;
  readonly partial1Hz: number | null;
  readonly partial1HzU: number | null;
  readonly partial1Source: 'measured' | 'fitted';
  readonly f0Hz: number | null;
  readonly f0HzU: number | null;
  readonly inharmonicityB: number | null;
  readonly inharmonicityBU: number | null;
  readonly cents: number | null;
  readonly centsU: number | null;
  readonly lifeTimeS: number | null;
  readonly unisonStringsCents: readonly (number | null)[] | null;
  readonly partials: readonly PartialDocument[];
  readonly beating: BeatingDocument;
  readonly quality: QualityDocument;
};

export type PartialDocument = {
  readonly n: number;
  readonly hz: number | null;
  readonly hzU: number | null;
  readonly levelDb: number | null;
  readonly snrDb: number | null;
  readonly promptDecayS: number | null;
  readonly afterDecayS: number | null;
  readonly beats: readonly BeatDocument[];
  readonly components: readonly ComponentDocument[];
};

export type BeatDocument = {
  readonly rateHz: number | null;
  readonly rateHzU: number | null;
  readonly depthDb: number | null;
};

export type ComponentDocument = {
  readonly hz: number | null;
  readonly hzU: number | null;
  readonly levelDb: number | null;
  readonly decayS: number | null;
};

export type BeatingDocument = {
  readonly kind: BeatingKind;
  readonly rateHz: number | null;
  readonly depthDb: number | null;
  readonly partials: readonly number[];
  readonly reason: string;
};

export type QualityDocument = {
  readonly snrDb: number | null;
  readonly clipped: boolean;
  readonly usable: boolean;
  readonly reasons: readonly TakeFault[];
};

export function readingDocument(reading: NoteReading): ReadingDocument {
  return {
    note: midiToName(reading.midi),
    midi: reading.midi,
    string: reading.stringPosition,
    onsetS: measured(reading.onsetS),
    durationS: measured(reading.durationS),
    partial1Hz: measured(reading.partial1Hz),
    partial1HzU: measured(reading.partial1StandardUncertaintyHz),
    partial1Source: reading.partial1Source,
    f0Hz: measured(reading.f0Hz),
    f0HzU: measured(reading.f0StandardUncertaintyHz),
    inharmonicityB: measured(reading.inharmonicityB),
    inharmonicityBU: measured(reading.inharmonicityBStandardUncertainty),
    cents: measured(reading.offsetCents),
    centsU: measured(reading.offsetStandardUncertaintyCents),
    lifeTimeS: measured(reading.lifeTimeS),
    unisonStringsCents: reading.unisonStringsCents?.map(measured) ?? null,
    partials: reading.partials.map(partialDocument),
    beating: beatingDocument(reading.beating),
    quality: qualityDocument(reading.quality),
  };
}

function partialDocument(partial: PartialReading): PartialDocument {
  return {
    n: partial.partialNumber,
    hz: measured(partial.frequencyHz),
    hzU: measured(partial.frequencyStandardUncertaintyHz),
    levelDb: measured(partial.levelDbfs),
    snrDb: measured(partial.snrDb),
    promptDecayS: measured(partial.promptDecayTimeS),
    afterDecayS: measured(partial.afterDecayTimeS),
    beats: partial.beats.map((beat) => ({
      rateHz: measured(beat.rateHz),
      rateHzU: measured(beat.rateStandardUncertaintyHz),
      depthDb: measured(beat.depthDb),
    })),
    components: partial.components.map((component) => ({
      hz: measured(component.frequencyHz),
      hzU: measured(component.frequencyStandardUncertaintyHz),
      levelDb: measured(component.levelDbfs),
      decayS: measured(component.decayTimeS),
    })),
  };
}

function beatingDocument(beating: Beating): BeatingDocument {
  return {
    kind: beating.kind,
    rateHz: measured(beating.rateHz),
    depthDb: measured(beating.depthDb),
    partials: beating.partialNumbers,
    reason: beating.reason,
  };
}

function qualityDocument(quality: TakeQuality): QualityDocument {
  return {
    snrDb: measured(quality.snrDb),
    clipped: quality.isClipped,
    usable: quality.isUsable,
    reasons: quality.faults,
  };
}

/** JSON has no word for "infinite" or "not a number": both mean that nothing could be measured. */
export function measured(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}
