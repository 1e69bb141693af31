/** What an archive holds, as plain data. Every row may carry a stamp and a deletion (piano/stamp.ts) besides. */
import type { ClockCalibration } from '../../piano/clock.ts';
import type { Instrument, InstrumentEvent, Survey, Take, TakeSound, Visit } from '../../piano/instrument.ts';
import type { Photograph, PhotographFile } from '../../piano/photograph.ts';
import type { Stamp } from '../../piano/stamp.ts';
import type {
  BridgeTrial,
  OwnWireGrade,
  StringDecision,
  StringingSchedule,
  TorqueReading,
} from '../../piano/stringingRecords.ts';

/** As the records keep it: the version of a row that does not stand in its table. */
export type ArchivedRival = {
  readonly id: string;
  readonly instrumentId: string | null;
  readonly table: string;
  readonly rowId: string;
  readonly foundAt: string;
  /** Stamp included. */
  readonly row: unknown;
};

/** As the records keep it: what is left of a row that was deleted for good. */
export type ArchivedGone = {
  /** Table and row id with a slash between; a number behind another slash where it was deleted more than once apart. */
  readonly id: string;
  readonly instrumentId: string | null;
  readonly table: string;
  readonly rowId: string;
  readonly stamp: Stamp;
  readonly deletedAt: string;
};

/** A row of an archive whose instrument, visit or survey is not there. */
export type UnattachedRow = { readonly table: string; readonly rowId: string; readonly row: unknown };

/** The rows of the archive, by the names that the records have for their tables. */
export type ArchiveRows = {
  instruments: Instrument;
  events: InstrumentEvent;
  visits: Visit;
  surveys: Survey;
  calibrations: ClockCalibration;
  takes: Take;
  sounds: TakeSound;
  torques: TorqueReading;
  decisions: StringDecision;
  trials: BridgeTrial;
  schedules: StringingSchedule;
  wireGrades: OwnWireGrade;
  photographs: Photograph;
  photographFiles: PhotographFile;
  rivals: ArchivedRival;
  gone: ArchivedGone;
  unattached: UnattachedRow;
};
export type ArchiveRowKind = keyof ArchiveRows;

export type RowSource<Row> = Iterable<Row> | AsyncIterable<Row>;

/**
 * What is to be written. Whatever is missing is taken to be empty. `takes` is asked for several times, since each of its tables is
 * written from front to back: it has to give the same takes in the same order each time.
 */
export type ArchiveContents = {
  readonly [Kind in Exclude<ArchiveRowKind, 'takes' | 'unattached'>]?: RowSource<ArchiveRows[Kind]>;
} & { readonly takes?: () => RowSource<Take>; readonly unattached?: RowSource<UnattachedRow> };

/** What the writer of an archive left out on purpose. */
export type LeftOut = 'owners' | 'visitors' | 'sounds' | 'photographs';

/** Rows as they come out of an archive: a few hundred at a time, parents before children. */
export type ArchiveBatch = {
  [Kind in ArchiveRowKind]: { readonly kind: Kind; readonly rows: readonly ArchiveRows[Kind][] };
}[ArchiveRowKind];
