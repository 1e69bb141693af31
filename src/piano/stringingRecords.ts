/** What the records keep of the stringing desk: schedules, own wire tables, trials at the bridge, decisions, torque. Plain data. */
import type {
  DecisionId,
  InstrumentId,
  ScheduleId,
  SurveyId,
  TakeId,
  TorqueId,
  TrialId,
  VisitId,
  WireGradeId,
} from './ids.ts';
import type { StringPosition } from './reading.ts';

export type WrapMetal = 'copper' | 'iron' | 'brass';
export type Bridge = 'bass' | 'long';

/** One note of a stringing schedule. `null` is what nobody measured yet. */
export type ScheduleRow = {
  readonly midi: number;
  readonly stringCount: number | null;
  readonly speakingLengthMm: number | null;
  /** Of a plain string; the diameter over the wrap of a wound one. */
  readonly wireDiameterMm: number | null;
  /** Null for plain wire. */
  readonly coreDiameterMm: number | null;
  readonly wrap: WrapMetal | null;
  readonly wireGrade: string | null;
  readonly bridge: Bridge | null;
  /** Names of the fields above that were not measured but interpolated between measured notes. */
  readonly interpolated: readonly string[];
};

/** A schedule of an instrument: as it is, or one of the plans for it. */
export type StringingSchedule = {
  readonly id: ScheduleId;
  readonly instrumentId: InstrumentId;
  readonly name: string;
  readonly kind: 'as it is' | 'planned';
  readonly pitchStandardHz: number;
  /** Ascending by note, one a note. */
  readonly rows: readonly ScheduleRow[];
  readonly remark: string;
};

/** A wire table of the user's own, for historical or softer wire. */
export type OwnWireGrade = {
  readonly id: WireGradeId;
  readonly name: string;
  /** Where the figures come from. */
  readonly source: string;
  readonly youngsModulusGpa: number;
  readonly densityKgPerM3: number;
  /** Ascending by diameter. */
  readonly rows: readonly { readonly diameterMm: number; readonly tensileStrengthMpa: number }[];
};

export type DecisionChoice = 'leave' | 'bridge work' | 'replace wire' | 'replace pin' | 'look again';

export type StringDecision = {
  readonly id: DecisionId;
  readonly instrumentId: InstrumentId;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly choice: DecisionChoice;
  readonly reason: string;
  /** ISO 8601 calendar date. */
  readonly decidedOn: string;
  /** Null: not done yet. */
  readonly doneOn: string | null;
};

export type TrialKind =
  | 'hold the bridge pin'
  | 'press the wire at the bridge'
  | 'tap the wire to the bridge'
  | 'seat the wire at the other end'
  | 'take out its twist'
  | 'other';

/** Something that was done to a string between two recordings of it. */
export type BridgeTrial = {
  readonly id: TrialId;
  readonly instrumentId: InstrumentId;
  readonly visitId: VisitId;
  /** The survey that its takes are in. */
  readonly surveyId: SurveyId;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly kind: TrialKind;
  /** ISO 8601 date and time. */
  readonly triedAt: string;
  readonly takesBefore: readonly TakeId[];
  readonly takesAfter: readonly TakeId[];
  readonly remark: string;
};

/** The torque of one tuning pin, read with a wrench at a visit. */
export type TorqueReading = {
  readonly id: TorqueId;
  readonly instrumentId: InstrumentId;
  readonly visitId: VisitId;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly torqueNm: number;
  readonly direction: 'sharpwards' | 'flatwards' | 'not noted';
  readonly remark: string;
};
