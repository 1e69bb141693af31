/**
 * The only door to the database: plain async functions. Reads give plain data, oldest first. Writes give a `WriteOutcome`:
 * they happened and are on the disk, or they did not and nothing changed. What is deleted goes into the bin first (deletions.ts),
 * but for the demonstration, which can be made again.
 */
import { liveQuery } from 'dexie';
import type { ArchiveContents } from '../files/archive/archiveContents.ts';
import type { Archive } from '../files/archive/readArchive.ts';
import type { ClockCalibration } from '../piano/clock.ts';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, TakeSound, Visit } from '../piano/instrument.ts';
import type { NoteReading } from '../piano/reading.ts';
import { type BenchRecords, benchFunctions } from './benchRecords.ts';
import { type BinRecords, binFunctions } from './binRecords.ts';
import { by } from './byKey.ts';
import { type Connection, createConnection } from './connection.ts';
import { openDatabase, type RecordsDatabase } from './database.ts';
import { hasDemonstration, removeDemonstration } from './demonstrationRows.ts';
import type { MeetingReport } from './meeting.ts';
import type { MeetingOptions, MeetingPlace } from './meetingPlace.ts';
import type { MergeOptions, MergeReport } from './mergeArchive.ts';
import { type RecordSet, readRecordSet, writeRecordSet } from './recordSet.ts';
import { type RivalRecords, rivalFunctions } from './rivals.ts';
import { saveRow } from './saveRow.ts';
import { type SettingRecords, settingFunctions } from './settings.ts';
import { createSoundRows, type DamagedRow, type SoundRows } from './soundRows.ts';
import { surveysBegunSince } from './surveysBegun.ts';
import { keptTakesOfInstrument, rowsOfSurvey, takeOf, takesOfSurvey } from './takeReads.ts';
import { type SoundSizes, saveSound, soundOf, soundSizes } from './takeSounds.ts';
import {
  addReadings,
  changeTakeNote,
  type FurtherReading,
  type KeepTakeOptions,
  type KeepTakeOutcome,
  keepTake,
  setKept,
} from './takeWrites.ts';
import type { WriteOutcome } from './writeOutcome.ts';

export type Records = {
  listInstruments(): Promise<Instrument[]>;
  instrument(id: InstrumentId): Promise<Instrument | undefined>;
  saveInstrument(instrument: Instrument): Promise<WriteOutcome>;

  eventsOf(instrumentId: InstrumentId): Promise<InstrumentEvent[]>;
  saveEvent(event: InstrumentEvent): Promise<WriteOutcome>;

  visit(id: VisitId): Promise<Visit | undefined>;
  visitsOf(instrumentId: InstrumentId): Promise<Visit[]>;
  saveVisit(visit: Visit): Promise<WriteOutcome>;

  survey(id: SurveyId): Promise<Survey | undefined>;
  surveysOf(visitId: VisitId): Promise<Survey[]>;
  surveysOfInstrument(instrumentId: InstrumentId): Promise<Survey[]>;
  saveSurvey(survey: Survey): Promise<WriteOutcome>;
  /** Of instruments that are not of the demonstration. An empty text: all of them. */
  surveysBegunSince(startedAfter: string): Promise<{ readonly count: number; readonly firstAt: string | null }>;

  take(id: TakeId): Promise<Take | undefined>;
  /** All takes of a survey, kept or not, in the order recorded. */
  takesOfSurvey(surveyId: SurveyId): Promise<Take[]>;
  /** Whether the survey has any take, those set aside and those in the bin included. */
  hasTakes(surveyId: SurveyId): Promise<boolean>;
  /** The kept take of every note and string of every survey, ready for `change` and `drift`. */
  keptTakesOfInstrument(instrumentId: InstrumentId): Promise<Take[]>;
  /** Stores a take; see takeWrites.ts for which one is then the kept one. The loser stays, set aside. */
  keepTake(take: Take, options?: KeepTakeOptions): Promise<KeepTakeOutcome>;
  /** Moves a take to another note, with a new reading where the caller measured it again as that note. */
  changeTakeNote(takeId: TakeId, midi: number, remeasured?: NoteReading): Promise<WriteOutcome>;
  /** Makes a take the kept one of its note and string, or sets it aside. */
  setKept(takeId: TakeId, isKept: boolean): Promise<WriteOutcome>;

  /** Further readings of takes' sounds, all or none; the ones before stay with their takes. */
  addReadings(further: readonly FurtherReading[]): Promise<WriteOutcome>;

  sound(takeId: TakeId): Promise<TakeSound | undefined>;
  /** Of one survey, or of all. */
  soundSizes(surveyId?: SurveyId): Promise<SoundSizes>;
  /** Stores the sound of a take that is stored already, by a write of its own; what fails here leaves the take as it is. */
  saveSound(sound: TakeSound): Promise<WriteOutcome>;

  /** The comparisons of a microphone with a reference, or of all microphones, oldest first. They belong to this device. */
  calibrationsOf(deviceLabel?: string): Promise<ClockCalibration[]>;
  saveCalibration(calibration: ClockCalibration): Promise<WriteOutcome>;
} & BenchRecords &
  BinRecords &
  SettingRecords &
  RivalRecords &
  Connection & {
    /** What an archive is written from; null: everything. Rows are read as they are asked for. */
    archiveContents(instrumentIds: readonly InstrumentId[] | null): Promise<ArchiveContents>;
    /** Brings an archive in, or says what that would do; see mergeArchive.ts. */
    mergeArchive(archive: Archive, options?: MergeOptions): Promise<MergeReport>;
    /** Meets other devices in a shared folder; see meeting.ts. */
    meet(place: MeetingPlace, options: MeetingOptions): Promise<MeetingReport>;
    /** Before the first meeting in another folder. */
    forgetMeeting(): Promise<void>;
    /** Everything but the sounds, or everything of one instrument: for the archive and for a backup. */
    readRecordSet(instrumentId?: InstrumentId): Promise<RecordSet>;
    /** Inserts or updates all of it in one transaction: all or nothing. */
    writeRecordSet(set: RecordSet): Promise<WriteOutcome>;

    hasDemonstration(): Promise<boolean>;
    removeDemonstration(): Promise<WriteOutcome>;

    /**
     * Runs a query of these functions now and again after each change to what it read, in this tab or another.
     * Await nothing but functions of `Records` inside the query. Returns the function that ends it.
     */
    observe<Value>(
      query: () => Promise<Value>,
      onValue: (value: Value) => void,
      onError: (error: unknown) => void,
    ): () => void;

    /** Rows that could not be read since opening. They were left out of the answers and are still in the database as they are. */
    damagedRows(): readonly DamagedRow[];
    close(): void;
  };

export type OpenOptions = {
  /** Told where another page of this program holds older records open: opening goes on by itself once it lets go. */
  readonly onBlocked?: (() => void) | undefined;
};

/**
 * Opens the records of this device, creating them the first time.
 * @throws {RecordsUnavailableError} with the reason, where there is no database to be had
 */
export async function openRecords(databaseName = 'stillpin', { onBlocked }: OpenOptions = {}): Promise<Records> {
  const database = await openDatabase(databaseName, onBlocked);
  const sound = createSoundRows();
  return {
    ...instrumentFunctions(database, sound),
    ...visitFunctions(database, sound),
    ...takeFunctions(database, sound),
    ...soundFunctions(database, sound),
    ...calibrationFunctions(database, sound),
    ...benchFunctions(database, sound),
    ...binFunctions(database),
    ...settingFunctions(database),
    ...rivalFunctions(database),
    ...createConnection(database),
    archiveContents: async (instrumentIds) =>
      (await import('./archiveSource.ts')).archiveSource(database, instrumentIds),
    // What reads and writes archives is large, and fetched when it is needed.
    mergeArchive: async (archive, options) =>
      (await import('./mergeArchive.ts')).mergeArchive(database, archive, options),
    meet: async (place, options) => (await import('./meeting.ts')).meet(database, place, options),
    forgetMeeting: async () => (await import('./meeting.ts')).forgetMeeting(database),
    readRecordSet: (instrumentId) => readRecordSet(database, sound, instrumentId),
    writeRecordSet: (set) => writeRecordSet(database, set),
    hasDemonstration: () => hasDemonstration(database),
    removeDemonstration: () => removeDemonstration(database),
    observe,
    damagedRows: sound.damagedRows,
    close: () => database.close(),
  };
}

type InstrumentFunctions = Pick<
  Records,
  'listInstruments' | 'instrument' | 'saveInstrument' | 'eventsOf' | 'saveEvent'
>;

function instrumentFunctions(database: RecordsDatabase, sound: SoundRows): InstrumentFunctions {
  const { instruments, events } = database;
  return {
    listInstruments: async () => sound.all('instruments', await instruments.toArray()).sort(by((row) => row.name)),
    instrument: async (id) => sound.one('instruments', await instruments.get(id)),
    saveInstrument: (instrument) => saveRow(database, 'instruments', instrument),
    eventsOf: async (instrumentId) => {
      const rows = await events.where({ instrumentId }).toArray();
      return sound.all('events', rows).sort(by((row) => row.happenedOn));
    },
    saveEvent: (event) => saveRow(database, 'events', event),
  };
}

type VisitFunctions = Pick<
  Records,
  | 'visit'
  | 'visitsOf'
  | 'saveVisit'
  | 'survey'
  | 'surveysOf'
  | 'surveysOfInstrument'
  | 'saveSurvey'
  | 'surveysBegunSince'
>;

function visitFunctions(database: RecordsDatabase, sound: SoundRows): VisitFunctions {
  const { visits, surveys } = database;
  return {
    visit: async (id) => sound.one('visits', await visits.get(id)),
    visitsOf: async (instrumentId) => {
      const rows = await visits.where({ instrumentId }).toArray();
      return sound.all('visits', rows).sort(by((row) => row.visitedOn));
    },
    saveVisit: (visit) => saveRow(database, 'visits', visit),
    survey: async (id) => sound.one('surveys', await surveys.get(id)),
    surveysOf: async (visitId) => {
      const rows = await surveys.where({ visitId }).toArray();
      return sound.all('surveys', rows).sort(by((row) => row.startedAt));
    },
    surveysOfInstrument: async (instrumentId) => {
      const rows = await surveys.where({ instrumentId }).toArray();
      return sound.all('surveys', rows).sort(by((row) => row.startedAt));
    },
    saveSurvey: (survey) => saveRow(database, 'surveys', survey),
    surveysBegunSince: (startedAfter) => surveysBegunSince(database, startedAfter),
  };
}

function calibrationFunctions(
  database: RecordsDatabase,
  sound: SoundRows,
): Pick<Records, 'calibrationsOf' | 'saveCalibration'> {
  const { calibrations } = database;
  return {
    calibrationsOf: async (deviceLabel) => {
      const found = deviceLabel === undefined ? calibrations.toCollection() : calibrations.where({ deviceLabel });
      return sound.all('calibrations', await found.toArray()).sort(by((row) => row.measuredAt));
    },
    saveCalibration: (calibration) => saveRow(database, 'calibrations', calibration),
  };
}

type TakeFunctions = Pick<
  Records,
  | 'take'
  | 'takesOfSurvey'
  | 'hasTakes'
  | 'keptTakesOfInstrument'
  | 'keepTake'
  | 'changeTakeNote'
  | 'setKept'
  | 'addReadings'
>;

function takeFunctions(database: RecordsDatabase, sound: SoundRows): TakeFunctions {
  return {
    take: (id) => takeOf(database, sound, id),
    takesOfSurvey: (surveyId) => takesOfSurvey(database, sound, surveyId),
    hasTakes: async (surveyId) => (await rowsOfSurvey(database, surveyId).limit(1).count()) > 0,
    keptTakesOfInstrument: (instrumentId) => keptTakesOfInstrument(database, sound, instrumentId),
    keepTake: (take, options) => keepTake(database, take, options),
    changeTakeNote: (takeId, midi, remeasured) => changeTakeNote(database, takeId, midi, remeasured),
    setKept: (takeId, isKept) => setKept(database, takeId, isKept),
    addReadings: (further) => addReadings(database, further),
  };
}

function soundFunctions(
  database: RecordsDatabase,
  sound: SoundRows,
): Pick<Records, 'sound' | 'soundSizes' | 'saveSound'> {
  return {
    sound: (takeId) => soundOf(database, sound, takeId),
    soundSizes: (surveyId) => soundSizes(database, surveyId),
    saveSound: (takeSound) => saveSound(database, takeSound),
  };
}

function observe<Value>(
  query: () => Promise<Value>,
  onValue: (value: Value) => void,
  onError: (error: unknown) => void,
): () => void {
  const subscription = liveQuery(query).subscribe({ next: onValue, error: onError });
  return () => subscription.unsubscribe();
}
