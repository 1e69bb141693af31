/** Every message between the page, the listening worker and the measuring worker. */
import type { QuietRoom } from '../analysis/signal/quietRoom.ts';
import type { StringPosition, TakeOutcome } from '../piano/reading.ts';

/** What the page knows about the strings that sound now; a take belongs to what was set when it was struck. */
export type ListeningSettings = {
  readonly pitchStandardHz: number;
  readonly stringPosition: StringPosition;
  /** Given note: forces it. Absent: the note is found. */
  readonly midi?: number;
  /** The note to be played next, where the user said so: a weak hint, never against the evidence. A walk needs none. */
  readonly expectedMidi?: number;
};

/** Page to listening worker. */
export type ListeningRequest =
  | {
      readonly kind: 'open';
      /** From the audio thread: BlockMessage. */
      readonly blocks: MessagePort;
      /** To the measuring worker: MeasuringRequest. */
      readonly measuring: MessagePort;
      readonly sampleRateHz: number;
      readonly settings: ListeningSettings;
    }
  | { readonly kind: 'settings'; readonly settings: ListeningSettings }
  | { readonly kind: 'hole' }
  | { readonly kind: 'pause' }
  | { readonly kind: 'resume' }
  | { readonly kind: 'finish' };

export type SegmentEnd = 'decay' | 'next-strike' | 'longest' | 'end-of-recording';

type StruckSound = {
  /** From a little before the strike. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  /** Time of the first sample since listening began. */
  readonly startS: number;
  readonly onsetIndex: number;
  /** Those that held at the strike. */
  readonly settings: ListeningSettings;
  /** How often they had been set until then: a note that is named again counts again. */
  readonly settingsNumber: number;
};

/** Listening worker to measuring worker: one cut stretch. */
export type SegmentToMeasure = StruckSound & {
  readonly kind: 'segment';
  readonly endedBy: SegmentEnd;
  readonly hasHole: boolean;
};

/** A take that still sounds, as much of it as there is; its segment follows. */
export type EarlyToMeasure = StruckSound & { readonly kind: 'early' };

export type MeasuringRequest = SegmentToMeasure | EarlyToMeasure | { readonly kind: 'end' };

/** Page to measuring worker. */
export type MeasuringSetUp = { readonly kind: 'segments-from'; readonly segments: MessagePort };

export type LevelMessage = {
  readonly kind: 'level';
  readonly peakDbfs: number;
  readonly rmsDbfs: number;
  readonly isClipped: boolean;
};

export type HoleCause = 'frames-missing' | 'zeros-inside-sound' | 'interrupted';

export type HoleMessage = {
  readonly kind: 'hole';
  readonly cause: HoleCause;
  readonly atS: number;
  /** Null where it is not known. */
  readonly durationS: number | null;
};

/** How many samples the audio clock counted by a time of the system's clock; see clockDrift. */
export type ClockMessage = {
  readonly kind: 'clock';
  readonly audioFrameCount: number;
  readonly systemTimeMs: number;
  /** Changes where the two cannot be compared across, as after an interruption. */
  readonly runNumber: number;
};

export type TakeMessage = {
  readonly kind: 'take';
  readonly outcome: TakeOutcome;
  readonly settings: ListeningSettings;
  readonly startS: number;
  readonly onsetS: number;
  readonly durationS: number;
  readonly endedBy: SegmentEnd;
  readonly hasHole: boolean;
  /** The take itself, for keeping and playing; samples from startS on. */
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
};

/** What a take that still sounds looks like so far. To be shown, never stored: its TakeMessage follows. */
export type EarlyMessage = {
  readonly kind: 'early';
  /** The same as its take's. */
  readonly onsetS: number;
  /** From the strike to where the sound was measured. */
  readonly toneS: number;
  readonly midi: number;
  readonly offsetCents: number;
  readonly offsetStandardUncertaintyCents: number;
};

/** What the quiet before the first take is like. */
export type RoomMessage = { readonly kind: 'room' } & QuietRoom;

/** From either worker to the page. */
export type ListeningReport =
  | LevelMessage
  | HoleMessage
  | ClockMessage
  | TakeMessage
  | EarlyMessage
  | RoomMessage
  | { readonly kind: 'strike'; readonly atS: number }
  | { readonly kind: 'room-level'; readonly levelDbfs: number }
  | { readonly kind: 'finished' }
  /** A fault of the program. */
  | { readonly kind: 'failed'; readonly detail: string };
