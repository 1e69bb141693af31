/** Part of what there is: some instruments, with all that belongs to them. */
import type { ArchiveContents, ArchiveRowKind, RowSource } from './archiveContents.ts';
import type { Archive } from './readArchive.ts';

/** What an archive holds, to be written into another one. Rows are read as they are asked for. */
export function contentsOfArchive(archive: Archive): ArchiveContents {
  const rows = <Row>(kind: ArchiveRowKind): AsyncGenerator<Row> => rowsOfKind(archive, kind) as AsyncGenerator<Row>;
  return {
    instruments: rows('instruments'),
    events: rows('events'),
    visits: rows('visits'),
    surveys: rows('surveys'),
    calibrations: rows('calibrations'),
    takes: () => rows('takes'),
    sounds: rows('sounds'),
    torques: rows('torques'),
    decisions: rows('decisions'),
    trials: rows('trials'),
    schedules: rows('schedules'),
    wireGrades: rows('wireGrades'),
    photographs: rows('photographs'),
    photographFiles: rows('photographFiles'),
    rivals: rows('rivals'),
    gone: rows('gone'),
    unattached: rows('unattached'),
  };
}

/** Pictures are read with the rows that name them. */
async function* rowsOfKind(archive: Archive, kind: ArchiveRowKind): AsyncGenerator<unknown> {
  const wanted = kind === 'photographFiles' ? 'photographs' : kind;
  for await (const batch of archive.batches({ kinds: [wanted] })) if (batch.kind === kind) yield* batch.rows;
}

type OfInstrument = { readonly instrumentId: string | null };

/**
 * Only these instruments. Calibrations and wire grades belong to none: those stay that their surveys and schedules name.
 * Rows that belong to no instrument are left out.
 */
export function someInstruments(contents: ArchiveContents, ids: ReadonlySet<string>): ArchiveContents {
  const calibrationIds = new Set<string>();
  const gradeNames = new Set<string>();
  const own = <Row extends OfInstrument>(rows: RowSource<Row> | undefined) =>
    filtered(rows, ({ instrumentId }) => instrumentId !== null && ids.has(instrumentId));
  return {
    instruments: filtered(contents.instruments, ({ id }) => ids.has(id)),
    events: own(contents.events),
    visits: own(contents.visits),
    surveys: filtered(contents.surveys, ({ instrumentId, calibration }) => {
      if (ids.has(instrumentId) && calibration) calibrationIds.add(calibration.id);
      return ids.has(instrumentId);
    }),
    calibrations: filtered(contents.calibrations, ({ id }) => calibrationIds.has(id)),
    takes: () => own(contents.takes?.()),
    sounds: own(contents.sounds),
    torques: own(contents.torques),
    decisions: own(contents.decisions),
    trials: own(contents.trials),
    schedules: filtered(contents.schedules, ({ instrumentId, rows }) => {
      if (ids.has(instrumentId)) for (const { wireGrade } of rows) if (wireGrade !== null) gradeNames.add(wireGrade);
      return ids.has(instrumentId);
    }),
    wireGrades: filtered(contents.wireGrades, ({ id, name }) => gradeNames.has(name) || gradeNames.has(id)),
    photographs: own(contents.photographs),
    photographFiles: own(contents.photographFiles),
    rivals: own(contents.rivals),
    gone: own(contents.gone),
  };
}

async function* filtered<Row>(rows: RowSource<Row> | undefined, isWanted: (row: Row) => boolean): AsyncGenerator<Row> {
  for await (const row of rows ?? []) if (isWanted(row)) yield row;
}
