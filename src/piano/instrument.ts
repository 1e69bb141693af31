/** An instrument, what was done to it, and the visits it got. Plain data, no behaviour. */
import type { ClockCalibration, ClockOffset } from './clock.ts';
import type { Compass } from './compass.ts';
import type { EventId, InstrumentId, SurveyId, TakeId, VisitId } from './ids.ts';
import type { NoteReading, StringPosition } from './reading.ts';
import type { SurveyScope } from './surveyScope.ts';

export type InstrumentKind = 'grand' | 'upright' | 'square' | 'other';

/**
 * What holds the pins: the block as it was built, the old one repaired in place (plugged, impregnated, bushed), or a newer one by its
 * construction: solid planks, laminated (a few thick plies), densified laminate (many thin, pressed and resin-bonded).
 */
export type PinBlockKind =
  | 'original'
  | 'repaired in place'
  | 'solid planks'
  | 'laminated'
  | 'densified laminate'
  | 'other';

export type Instrument = {
  readonly id: InstrumentId;
  readonly name: string;
  readonly kind: InstrumentKind;
  readonly builtYear: number | null;
  readonly serialNumber: string;
  readonly compass: Compass;
  /** The highest note on the bass bridge; null where nobody said. */
  readonly bassBridgeTopMidi: number | null;
  /** Notes after which a plate strut breaks the row of pins. */
  readonly strutsAfterMidi: readonly number[];
  readonly pinBlock: string;
  /** Absent where nobody said. Instruments are compared by it; `pinBlock` says it in words. */
  readonly pinBlockKind?: PinBlockKind;
  /** Of the tuning pins, where they were measured; absent: not known. */
  readonly tuningPinDiameterMm?: number;
  readonly remark: string;
  /** Whose it is and where it stands; absent where nobody said. Either can be left out of an export. */
  readonly ownerName?: string;
  readonly ownerAddress?: string;
  /** The slip that matters for this instrument, in cents a year; absent: the usual one. */
  readonly slipThresholdCentsPerYear?: number;
  /** True for the invented workshop that the app offers to look around in. */
  readonly isDemonstration: boolean;
};

export type EventKind = 'restrung' | 'string-replaced' | 'pin-replaced' | 'block-work' | 'moved' | 'tuned';

export type InstrumentEvent = {
  readonly id: EventId;
  readonly instrumentId: InstrumentId;
  readonly happenedOn: string;
  readonly kind: EventKind;
  readonly fromMidi: number | null;
  readonly toMidi: number | null;
  readonly remark: string;
};

export type Visit = {
  readonly id: VisitId;
  readonly instrumentId: InstrumentId;
  /** ISO 8601 calendar date. */
  readonly visitedOn: string;
  readonly visitedBy: string;
  readonly humidityPct: number | null;
  readonly temperatureC: number | null;
  readonly pitchStandardHz: number;
  readonly remark: string;
};

export type SurveyStage = 'as-found' | 'as-left';

export type Survey = {
  readonly id: SurveyId;
  readonly visitId: VisitId;
  readonly instrumentId: InstrumentId;
  readonly stage: SurveyStage;
  /** ISO 8601 date and time. */
  readonly startedAt: string;
  readonly finishedAt: string | null;
  /** What the sound came in through: the microphone's label, or the file's name. */
  readonly deviceLabel: string;
  readonly sampleRateHz: number | null;
  /** Which strings sounded: centre strings behind a felt strip, open unisons, or one string position. */
  readonly strings: 'centre strings' | 'open unisons' | 'single strings';
  /** Which notes were asked for; absent where all were. */
  readonly scope?: SurveyScope;
  /** The sample clock against the system's own while the survey was recorded; absent where there was not enough evidence. */
  readonly clockAgainstSystem?: ClockOffset;
  /** The newest calibration of this microphone at the time. No figure of the survey was changed by it. */
  readonly calibration?: ClockCalibration;
};

/** One take of one note. Every take is kept; for each note and string of a survey one is the kept one. */
export type Take = {
  readonly id: TakeId;
  readonly surveyId: SurveyId;
  readonly visitId: VisitId;
  readonly instrumentId: InstrumentId;
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly recordedAt: string;
  readonly isKept: boolean;
  /** The newest one, where the sound was measured again. */
  readonly reading: NoteReading;
  /** Absent where nobody noted it. */
  readonly measured?: Measured;
  /** What the same sound was read as before, oldest first; absent where it was measured once. */
  readonly earlierReadings?: readonly EarlierReading[];
};

/** Which program made a reading, and when. */
export type Measured = { readonly programVersion: string; readonly measuredAt: string };

export type EarlierReading = { readonly reading: NoteReading; readonly measured: Measured | null };

/** The sound of one take as it is stored: from a little before its strike. */
export type TakeSound = {
  /** The take's own id: one sound at most for each. */
  readonly id: TakeId;
  readonly surveyId: SurveyId;
  readonly instrumentId: InstrumentId;
  readonly sampleRateHz: number;
  /** Index of the strike. */
  readonly onsetIndex: number;
  /** Time of the first sample in the recording that it was cut from. */
  readonly startS: number;
  readonly durationS: number;
  /** Of the whole take, which may have been longer than what is kept. */
  readonly takeDurationS: number;
  /** A whole file of this format, one channel. */
  readonly encoding: 'flac';
  readonly bytes: Uint8Array<ArrayBuffer>;
};
