/** Reads a whole archive and says whether it is whole and what is in it, without keeping anything. */
import type { ByteSource } from '../audio/byteSource.ts';
import type { ArchiveBatch, ArchiveRowKind, LeftOut } from './archiveContents.ts';
import { ArchiveFault, type ArchiveFaultReason, type Complaint, type StopSignal } from './archiveFault.ts';
import { type OpenOptions, openArchive } from './readArchive.ts';

export type InstrumentInArchive = {
  readonly id: string;
  readonly name: string;
  readonly isDeleted: boolean;
  readonly visitCount: number;
  readonly takeCount: number;
  readonly firstVisitOn: string | null;
  readonly lastVisitOn: string | null;
};

export type ArchiveReport = {
  /** True where everything in it can be read. */
  readonly isWhole: boolean;
  /** Why it could not be opened at all; null where it could. */
  readonly refusal: ArchiveFaultReason | null;
  /** The first hundred. */
  readonly complaints: readonly Complaint[];
  readonly complaintCount: number;
  readonly warnings: readonly string[];
  readonly createdAt: string | null;
  readonly programVersion: string | null;
  readonly leftOut: readonly LeftOut[];
  readonly byteCount: number;
  readonly unpackedBytes: number;
  readonly counts: Readonly<Record<ArchiveRowKind, number>>;
  readonly partialCount: number;
  readonly soundBytes: number;
  readonly photographBytes: number;
  readonly instruments: readonly InstrumentInArchive[];
};

export type CheckOptions = OpenOptions & {
  readonly signal?: StopSignal;
  readonly onProgress?: (share: number) => void;
};

const MOST_COMPLAINTS = 100;

/** @throws {ArchiveFault} only where it was told to stop */
export async function checkArchive(source: ByteSource, options: CheckOptions = {}): Promise<ArchiveReport> {
  const outcome = await openArchive(source, options);
  const survey = createSurvey();
  const complaints: Complaint[] = [];
  let complaintCount = 0;
  const complain = (complaint: Complaint) => {
    complaintCount += 1;
    if (complaints.length < MOST_COMPLAINTS) complaints.push(complaint);
  };
  if (!outcome.opened) {
    const { reason, complaint } = outcome.fault;
    return { ...UNOPENED, byteCount: source.byteCount, refusal: reason, complaints: [complaint], complaintCount: 1 };
  }
  const { archive } = outcome;
  await readThrough(archive.batches({ ...options, complain }), survey.add, complain);
  const { createdAt, programVersion, leftOut, byteCount, unpackedBytes, warnings } = archive;
  const facts = { createdAt, programVersion, leftOut, byteCount, unpackedBytes, warnings };
  return { isWhole: complaintCount === 0, refusal: null, complaints, complaintCount, ...facts, ...survey.result() };
}

async function readThrough(
  batches: AsyncGenerator<ArchiveBatch>,
  add: (batch: ArchiveBatch) => void,
  complain: (complaint: Complaint) => void,
): Promise<void> {
  try {
    for await (const batch of batches) add(batch);
  } catch (error) {
    if (!(error instanceof ArchiveFault) || error.reason === 'cancelled') throw error;
    complain(error.complaint);
  }
}

const NO_COUNTS: Readonly<Record<ArchiveRowKind, number>> = {
  instruments: 0,
  events: 0,
  visits: 0,
  surveys: 0,
  calibrations: 0,
  takes: 0,
  sounds: 0,
  torques: 0,
  decisions: 0,
  trials: 0,
  schedules: 0,
  wireGrades: 0,
  photographs: 0,
  photographFiles: 0,
  rivals: 0,
  gone: 0,
  unattached: 0,
};

type Contents = Pick<ArchiveReport, 'counts' | 'partialCount' | 'soundBytes' | 'photographBytes' | 'instruments'>;

const UNOPENED: Omit<ArchiveReport, 'byteCount' | 'refusal' | 'complaints' | 'complaintCount'> = {
  isWhole: false,
  warnings: [],
  createdAt: null,
  programVersion: null,
  leftOut: [],
  unpackedBytes: 0,
  counts: NO_COUNTS,
  partialCount: 0,
  soundBytes: 0,
  photographBytes: 0,
  instruments: [],
};

type Counting = { -readonly [Key in keyof InstrumentInArchive]: InstrumentInArchive[Key] };

function createSurvey(): { add: (batch: ArchiveBatch) => void; result: () => Contents } {
  const counts: Record<ArchiveRowKind, number> = { ...NO_COUNTS };
  const instruments = new Map<string, Counting>();
  let [partialCount, soundBytes, photographBytes] = [0, 0, 0];
  return {
    add(batch) {
      counts[batch.kind] += batch.rows.length;
      if (batch.kind === 'instruments') for (const row of batch.rows) instruments.set(row.id, emptyCounting(row));
      if (batch.kind === 'visits')
        for (const visit of batch.rows) countVisit(instruments.get(visit.instrumentId), visit.visitedOn);
      if (batch.kind === 'sounds') for (const { bytes } of batch.rows) soundBytes += bytes.length;
      if (batch.kind === 'photographFiles') for (const { bytes } of batch.rows) photographBytes += bytes.length;
      if (batch.kind !== 'takes') return;
      for (const { instrumentId, reading } of batch.rows) {
        const instrument = instruments.get(instrumentId);
        if (instrument) instrument.takeCount += 1;
        partialCount += reading.partials.length;
      }
    },
    result: () => ({ counts, partialCount, soundBytes, photographBytes, instruments: [...instruments.values()] }),
  };
}

function emptyCounting(row: { readonly id: string; readonly name: string; readonly deletedAt?: string }): Counting {
  const isDeleted = row.deletedAt !== undefined;
  return { id: row.id, name: row.name, isDeleted, visitCount: 0, takeCount: 0, firstVisitOn: null, lastVisitOn: null };
}

function countVisit(instrument: Counting | undefined, visitedOn: string): void {
  if (instrument === undefined) return;
  instrument.visitCount += 1;
  if (instrument.firstVisitOn === null || visitedOn < instrument.firstVisitOn) instrument.firstVisitOn = visitedOn;
  if (instrument.lastVisitOn === null || visitedOn > instrument.lastVisitOn) instrument.lastVisitOn = visitedOn;
}
