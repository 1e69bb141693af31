/** One instrument out of an archive, with what its pages are made from. */
import type { ArchiveBatch, ArchiveRowKind, ArchiveRows } from '../files/archive/archiveContents.ts';
import { ArchiveFault } from '../files/archive/archiveFault.ts';
import { type Archive, openArchive } from '../files/archive/readArchive.ts';
import { dataUri } from '../files/dataUri.ts';
import type { Instrument, Take } from '../piano/instrument.ts';
import type { Stamped } from '../piano/stamp.ts';
import type { ReportPhotograph, ReportRecords } from '../report/reportRecords.ts';
import { recordedTakes } from '../survey/recordedTakes.ts';
import { NODE_BYTE_WORK } from './archive/nodeByteWork.ts';
import { withFileBytes } from './fileBytes.ts';
import { type Terminal, UsageFault } from './terminal.ts';

export type InstrumentOfArchive = {
  readonly records: ReportRecords;
  /** The newest ones, oldest of them first. */
  readonly photographs: readonly ReportPhotograph[];
};

type Rows = { [Kind in WantedKind]: ArchiveRows[Kind][] };
type WantedKind = (typeof WANTED)[number];
const WANTED = [
  'instruments',
  'events',
  'visits',
  'surveys',
  'takes',
  'decisions',
  'photographs',
  'photographFiles',
] as const;

/**
 * @param name as the records have it, or an id; null where the archive is said to hold one instrument only
 * @throws {UsageFault} where the file is no archive or not whole, or the instrument is not in it
 */
export function readInstrumentOfArchive(
  path: string,
  name: string | null,
  photographCount: number,
  terminal: Pick<Terminal, 'progress' | 'endProgress'>,
): Promise<InstrumentOfArchive> {
  return withFileBytes(path, async (source) => {
    const outcome = await openArchive(source, { byteWork: NODE_BYTE_WORK });
    if (!outcome.opened) throw new UsageFault(`cannot read ${path}: ${outcome.fault.message}`);
    const rows = await collect(outcome.archive, path, terminal);
    const instrument = chosenInstrument(rows.instruments, name, path);
    return ofInstrument(rows, instrument, photographCount);
  });
}

/** Rows that were deleted are left out: their owner did not want them. */
async function collect(
  archive: Archive,
  path: string,
  terminal: Pick<Terminal, 'progress' | 'endProgress'>,
): Promise<Rows> {
  const rows: Rows = {
    instruments: [],
    events: [],
    visits: [],
    surveys: [],
    takes: [],
    decisions: [],
    photographs: [],
    photographFiles: [],
  };
  const onProgress = (share: number) => terminal.progress(`${Math.round(100 * share)} % of the archive read`);
  try {
    for await (const batch of archive.batches({ onProgress })) if (isWanted(batch)) add(rows, batch);
  } catch (error) {
    if (error instanceof ArchiveFault)
      throw new UsageFault(`cannot read ${path}: ${error.message}; \`archive check\` lists all that is wrong`);
    throw error;
  } finally {
    terminal.endProgress();
  }
  return rows;
}

function isWanted(batch: ArchiveBatch): batch is Extract<ArchiveBatch, { kind: WantedKind }> {
  return WANTED.some((kind) => kind === batch.kind);
}

function add<Kind extends WantedKind>(
  rows: Rows,
  { kind, rows: added }: { kind: Kind; rows: readonly ArchiveRows[Kind][] },
) {
  rows[kind].push(...added.filter((row: ArchiveRows[ArchiveRowKind] & Stamped) => row.deletedAt === undefined));
}

function chosenInstrument(instruments: readonly Instrument[], name: string | null, path: string): Instrument {
  const wanted = name?.trim().toLowerCase();
  const found = instruments.filter(
    (instrument) => wanted === undefined || instrument.id === name || instrument.name.trim().toLowerCase() === wanted,
  );
  const [only, second] = found;
  if (only && !second) return only;
  const names = instruments.map((instrument) => `"${instrument.name}" (${instrument.id})`).join(', ');
  if (instruments.length === 0) throw new UsageFault(`${path} holds no instrument`);
  if (wanted === undefined) throw new UsageFault(`say which one with --instrument: ${path} holds ${names}`);
  if (second) throw new UsageFault(`--instrument "${name}" stands for more than one; give the id of one of ${names}`);
  throw new UsageFault(`--instrument "${name}" is not in ${path}, which holds ${names}`);
}

function ofInstrument(rows: Rows, instrument: Instrument, photographCount: number): InstrumentOfArchive {
  const own = <Row extends { readonly instrumentId: string }>(all: readonly Row[]): Row[] =>
    all.filter(({ instrumentId }) => instrumentId === instrument.id);
  const surveys = own(rows.surveys);
  const takes = keptTakes(own(rows.takes));
  const records = {
    instrument,
    events: own(rows.events),
    visits: own(rows.visits),
    surveys,
    takes,
    decisions: own(rows.decisions),
  };
  return { records, photographs: pictures(own(rows.photographs), rows.photographFiles, photographCount) };
}

/** Survey by survey, with the uncertainty that the other takes of each survey support. */
function keptTakes(takes: readonly Take[]): Take[] {
  const bySurvey = new Map<string, Take[]>();
  for (const take of takes) {
    const ofSurvey = bySurvey.get(take.surveyId);
    if (ofSurvey) ofSurvey.push(take);
    else bySurvey.set(take.surveyId, [take]);
  }
  return [...bySurvey.values()].flatMap((ofSurvey) => recordedTakes(ofSurvey).kept);
}

function pictures(
  photographs: Rows['photographs'],
  files: Rows['photographFiles'],
  photographCount: number,
): ReportPhotograph[] {
  const dated = [...photographs].sort((a, b) => ((a.takenAt ?? a.addedAt) < (b.takenAt ?? b.addedAt) ? -1 : 1));
  const withFiles = dated.flatMap((photograph) => {
    const file = files.find(({ id }) => id === photograph.id);
    return file ? [{ photograph, file }] : [];
  });
  const newest = photographCount === 0 ? [] : withFiles.slice(-photographCount);
  return newest.map(({ photograph, file }) => ({ ...photograph, dataUri: dataUri(photograph.mediaType, file.bytes) }));
}
