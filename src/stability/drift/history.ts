/** An instrument's readings over years, as plain rows: what the judgement of its pins starts from. */
import type { Compass } from '../../piano/compass.ts';
import type { EventKind, SurveyStage } from '../../piano/instrument.ts';
import type { StringPosition } from '../../piano/reading.ts';

export type HistoryReading = {
  /** ISO 8601 calendar date. */
  readonly visitedOn: string;
  readonly stage: SurveyStage;
  readonly humidityPct: number | null;
  readonly temperatureC: number | null;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly cents: number;
  /** Null where the reading came without one; a usual figure for the register stands in. */
  readonly standardUncertaintyCents: number | null;
};

export type HistoryEvent = {
  readonly happenedOn: string;
  readonly kind: EventKind;
  /** Null: to the end of the compass. */
  readonly fromMidi: number | null;
  readonly toMidi: number | null;
};

export type DriftInstrument = {
  readonly compass: Compass | null;
  readonly bassBridgeTopMidi: number | null;
  readonly strutsAfterMidi: readonly number[];
};

/** Usual repeatability of a reading where none is stated: wider at both ends of the compass (common practice). */
export function usualUncertaintyCents(midi: number): number {
  if (midi < 33) return 1;
  if (midi > 96) return 1;
  return midi < 45 || midi > 84 ? 0.5 : 0.3;
}

/** The highest note of the bass bridge where nobody said: the trade's commonest break is at E2 to A♯2 on grands. */
export const USUAL_BASS_BRIDGE_TOP_MIDI = 43;
