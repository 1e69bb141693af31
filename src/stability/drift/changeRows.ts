/** What the judgement of years works on: strings, intervals between surveys, and each string's change in each. */
import type { SurveyStage } from '../../piano/instrument.ts';
import type { StringPosition } from '../../piano/reading.ts';

export type PianoString = { readonly midi: number; readonly stringPosition: StringPosition };

export type ChangeInterval = {
  readonly fromDate: string;
  readonly toDate: string;
  readonly years: number;
  readonly humidityChangePct: number | null;
  /** False where the piano was tuned after it was last read; then a change is against where a string is usually left. */
  readonly hasBaseline: boolean;
  /** Strings of the compass, or ever read, that give no change here. */
  readonly missingCount: number;
};

export type ChangeRow = {
  readonly stringIndex: number;
  readonly intervalIndex: number;
  readonly cents: number;
  readonly varianceCents2: number;
  /** Years since the string was last put on or its pin replaced; null where nobody noted it. */
  readonly sinceAnewYears: number | null;
};

export type ChangeTable = {
  readonly strings: readonly PianoString[];
  readonly intervals: readonly ChangeInterval[];
  readonly changes: readonly ChangeRow[];
};

export type SurveyValues = {
  readonly visitedOn: string;
  readonly stage: SurveyStage;
  /** By midi·4 + string position. */
  readonly values: ReadonlyMap<number, { readonly cents: number; readonly varianceCents2: number }>;
};
