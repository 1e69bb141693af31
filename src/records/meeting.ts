/**
 * Meets other devices in a shared folder (files/merge/meetingFolder.ts): reads what they added since the last time, and adds a file
 * with what this device knows and the folder does not. No file is ever changed, so two devices may meet at the same time.
 */
import { ArchiveFault, type StopSignal } from '../files/archive/archiveFault.ts';
import { openArchive } from '../files/archive/readArchive.ts';
import type { ByteSource } from '../files/audio/byteSource.ts';
import { type Published, planMeeting, publish } from '../files/merge/meetingFolder.ts';
import { tablesOfArchive } from '../files/merge/tablesOfArchive.ts';
import type { RecordsDatabase } from './database.ts';
import { addOwn } from './meetingAddition.ts';
import type { MeetingOptions, MeetingPlace } from './meetingPlace.ts';
import { mergeArchive } from './mergeArchive.ts';

export type MeetingReport = {
  /** Files of others that were read for the first time. */
  readonly readCount: number;
  /** Rows that came in, changed or went. */
  readonly changedCount: number;
  readonly rivalCount: number;
  /** Files that are not whole: still on their way, perhaps. They are tried again the next time. */
  readonly unreadable: readonly string[];
  /** What this device added; null where the folder knew all of it. */
  readonly addedName: string | null;
};

const MEMORY = 'meeting.memory';
type Memory = { readonly read: readonly string[]; readonly published: Published };

/** @throws whatever the folder throws; what was merged until then stays merged */
export async function meet(
  database: RecordsDatabase,
  place: MeetingPlace,
  options: MeetingOptions,
): Promise<MeetingReport> {
  const memory = await remembered(database);
  const plan = planMeeting(await place.names(), database.deviceId, new Set(memory.read));
  const read = [...memory.read];
  const unreadable: string[] = [];
  let published = memory.published;
  let [changedCount, rivalCount] = [0, 0];
  for (const { name } of plan.toRead) {
    const came = await readOne(database, await place.open(name), options.signal);
    if (!came) unreadable.push(name);
    else {
      changedCount += came.changedCount;
      rivalCount += came.rivalCount;
      published = publish(published, came.tables);
      read.push(name);
      await database.settings.put({ key: MEMORY, value: { read, published } satisfies Memory });
    }
  }
  const own = await addOwn(database, place, { name: plan.ownName, published, options });
  await database.settings.put({ key: MEMORY, value: { read, published: own.published } satisfies Memory });
  const addedName = own.isAdded ? plan.ownName : null;
  return { readCount: read.length - memory.read.length, changedCount, rivalCount, unreadable, addedName };
}

/** Another folder is another meeting: nothing is known of what it holds. */
export async function forgetMeeting(database: RecordsDatabase): Promise<void> {
  await database.settings.delete(MEMORY);
}

async function remembered(database: RecordsDatabase): Promise<Memory> {
  const value = (await database.settings.get(MEMORY))?.value as Partial<Memory> | undefined;
  return { read: value?.read ?? [], published: value?.published ?? new Map() };
}

async function readOne(database: RecordsDatabase, source: ByteSource, signal: StopSignal | undefined) {
  try {
    const outcome = await openArchive(source);
    if (!outcome.opened) return null;
    const wish = signal ? { signal } : {};
    const tables = await tablesOfArchive(outcome.archive, wish);
    const { instruments } = await mergeArchive(database, outcome.archive, wish);
    const sum = (count: (row: (typeof instruments)[number]) => number) =>
      instruments.reduce((all, row) => all + count(row), 0);
    const changedCount = sum((row) => row.newRows + row.changedRows + row.deletedRows);
    return { tables, changedCount, rivalCount: sum((row) => row.rivals) };
  } catch (fault) {
    if (fault instanceof ArchiveFault && fault.reason !== 'cancelled') return null;
    throw fault;
  }
}
