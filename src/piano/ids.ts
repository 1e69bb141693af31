/** Branded ids, so that a visit's id is never passed where an instrument's is meant. All are UUIDs made where the thing is made. */

declare const brand: unique symbol;
type Id<Name extends string> = string & { readonly [brand]: Name };

export type InstrumentId = Id<'instrument'>;
export type EventId = Id<'event'>;
export type VisitId = Id<'visit'>;
export type SurveyId = Id<'survey'>;
export type TakeId = Id<'take'>;
export type CalibrationId = Id<'calibration'>;
export type TorqueId = Id<'torque'>;
export type ScheduleId = Id<'schedule'>;
export type WireGradeId = Id<'wire grade'>;
export type DecisionId = Id<'decision'>;
export type TrialId = Id<'trial'>;
export type PhotographId = Id<'photograph'>;
