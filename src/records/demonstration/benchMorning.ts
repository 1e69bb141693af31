/** The plan of a morning at the bridge: which strings, what is tried on them, what is decided. */
import type { StringPosition } from '../../piano/reading.ts';
import type { DecisionChoice, TrialKind } from '../../piano/stringingRecords.ts';

/** What the beat's depth becomes when something is done; 0: it is gone. */
type InventedTrial = { readonly kind: TrialKind; readonly depthShare: number };

export type BenchString = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  /** Against the note's centre string. */
  readonly offsetCents: number;
  /** Stiffness against the centre string's, where another wire was put on. */
  readonly stiffnessShare?: number;
  readonly beat: {
    readonly rateHz: number;
    readonly depthDb: number;
    readonly partialNumbers: readonly number[];
  } | null;
  readonly trials: readonly InventedTrial[];
  readonly decision: {
    readonly choice: DecisionChoice;
    readonly reason: string;
    readonly isDone: boolean;
    /** What the work left of the beat's depth. */
    readonly depthShare: number;
  } | null;
};

export type BenchMorning = {
  /** The visit of the trials, and the later one at which the strings were recorded again; counted from the end where negative. */
  readonly visitIndex: number;
  readonly againIndex: number;
  readonly strings: readonly BenchString[];
};
