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

/** Listening worker to measuring worker: one cut stretch, from a little before its strike. */
export type SegmentToMeasure = {
  readonly kind: 'segment';
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  /** Time of the first sample since listening began. */
  readonly startS: number;
  readonly onsetIndex: number;
  readonly endedBy: SegmentEnd;
  readonly hasHole: boolean;
  /** Those that held at the strike. */
  readonly settings: ListeningSettings;
  /** How often they had been set until then: a note that is named again counts again. */
  readonly settingsNumber: number;
};

export type MeasuringRequest = SegmentToMeasure | { readonly kind: 'end' };

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

/** What the quiet before the first take is like. */
export type RoomMessage = { readonly kind: 'room' } & QuietRoom;

/** From either worker to the page. */
export type ListeningReport =
  | LevelMessage
  | HoleMessage
  | ClockMessage
  | TakeMessage
  | RoomMessage
  | { readonly kind: 'strike'; readonly atS: number }
  | { readonly kind: 'room-level'; readonly levelDbfs: number }
  | { readonly kind: 'finished' }
  /** A fault of the program. */
  | { readonly kind: 'failed'; readonly detail: string };
