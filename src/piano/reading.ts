/**
 * What one take of one note gives: the numbers that are kept for decades. Plain data, no behaviour.
 *
 * Frequencies follow f_n = n·f0·√(1 + B·n²) (H. Fletcher, J. Acoust. Soc. Am. 36 (1964) 203–209). All standard
 * uncertainties are one sigma. `null` means: could not be measured.
 */

/** 1, 2, 3 from left to right seen from the keyboard; 0 where the whole unison sounds or nobody said which. */
export type StringPosition = 0 | 1 | 2 | 3;

/** One damped sinusoid inside a partial. Level and decay belong to the start of the analysed stretch. */
export type PartialComponent = {
  readonly frequencyHz: number;
  readonly frequencyStandardUncertaintyHz: number;
  readonly levelDbfs: number;
  /** Time for 60 dB. */
  readonly decayTimeS: number;
};

export type Beat = {
  readonly rateHz: number;
  readonly rateStandardUncertaintyHz: number;
  /** Peak to trough of the envelope with the decay taken out. */
  readonly depthDb: number;
};

export type PartialReading = {
  readonly partialNumber: number;
  readonly frequencyHz: number;
  readonly frequencyStandardUncertaintyHz: number;
  /** Level at the start of the analysed stretch, relative to full scale (a full-scale sine is 0 dBFS). */
  readonly levelDbfs: number;
  /** Signal to noise of the strongest component within the partial's band, at the start of the analysed stretch. */
  readonly snrDb: number;
  readonly promptDecayTimeS: number | null;
  readonly afterDecayTimeS: number | null;
  readonly beats: readonly Beat[];
  readonly components: readonly PartialComponent[];
};

export type BeatingKind = 'none' | 'false beat' | 'unison' | 'undetermined';

export type Beating = {
  readonly kind: BeatingKind;
  readonly rateHz: number | null;
  readonly depthDb: number | null;
  readonly partialNumbers: readonly number[];
  /** One plain sentence. */
  readonly reason: string;
};

/** Why a take is not good. A closed list: screens and the command line have words for each. */
export type TakeFault =
  | 'clipped'
  | 'too-quiet'
  | 'too-noisy'
  | 'too-short'
  | 'wrong-note'
  | 'two-notes'
  | 'speech'
  | 'knock'
  | 'hole-in-recording'
  | 'no-onset'
  | 'fit-failed';

export type TakeQuality = {
  readonly snrDb: number;
  readonly isClipped: boolean;
  readonly isUsable: boolean;
  readonly faults: readonly TakeFault[];
};

export type NoteReading = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** From the start of the file or stream. */
  readonly onsetS: number;
  readonly durationS: number;
  readonly pitchStandardHz: number;
  readonly partial1Hz: number;
  readonly partial1StandardUncertaintyHz: number;
  readonly partial1Source: 'measured' | 'fitted';
  readonly f0Hz: number | null;
  readonly f0StandardUncertaintyHz: number | null;
  readonly inharmonicityB: number | null;
  readonly inharmonicityBStandardUncertainty: number | null;
  /** partial1Hz against equal temperament at the pitch standard. */
  readonly offsetCents: number;
  readonly offsetStandardUncertaintyCents: number;
  readonly partials: readonly PartialReading[];
  readonly beating: Beating;
  /** The strings of an open unison in cents against equal temperament, where they can be told apart. */
  readonly unisonStringsCents: readonly number[] | null;
  /** How long the note lives: time for 60 dB of the whole tone's slow part. */
  readonly lifeTimeS: number | null;
  readonly quality: TakeQuality;
};

/** Why no reading came out of a stretch of sound. */
export type NoNoteReason = 'silence' | 'too-short' | 'no-pitch' | 'knock' | 'speech' | 'two-notes';

export type TakeOutcome =
  | { readonly found: true; readonly reading: NoteReading }
  | { readonly found: false; readonly reason: NoNoteReason; readonly detail: string };
