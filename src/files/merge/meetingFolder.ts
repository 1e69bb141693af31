/**
 * A shared folder as a meeting point: every device adds files of its own, `<device>-<number>.zip`, and never touches another's. Nobody
 * needs to be there at the same time, and whatever copies the folder about may be slow: files are read when they have come.
 */

import { compareStamps, type Stamp } from '../../piano/stamp.ts';
import type { RecordTables } from './recordTables.ts';
import { rivalKey, rowKey } from './rowKeys.ts';
import type { RowVersion } from './rowVersion.ts';
import { compareText } from './rowVersion.ts';

export type MeetingFile = { readonly name: string; readonly deviceId: string; readonly number: number };

/** Undefined for files that are none of ours, unfinished ones among them (they end in `.part`). */
export function parseMeetingFile(name: string): MeetingFile | undefined {
  const parts = /^([a-z0-9][a-z0-9-]{0,63})-(\d{1,9})\.zip$/.exec(name);
  if (!parts) return undefined;
  const [, deviceId = '', number = ''] = parts;
  return name === meetingFileName(deviceId, Number(number)) ? { name, deviceId, number: Number(number) } : undefined;
}

/** @throws {RangeError} for a device id that cannot stand in a file name */
export function meetingFileName(deviceId: string, number: number): string {
  if (!/^[a-z0-9][a-z0-9-]{0,63}$/.test(deviceId))
    throw new RangeError(`deviceId must be small letters, digits and hyphens, got ${deviceId}`);
  return `${deviceId}-${String(number).padStart(6, '0')}.zip`;
}

export type MeetingPlan = {
  /** Not read before; oldest first. One that turns out not to be whole is still being copied, or its writer was interrupted: it is left for the next time. */
  readonly toRead: readonly MeetingFile[];
  /** The name for what this device adds. A number that an interrupted writing has used is not used again. */
  readonly ownName: string;
};

/** @param readBefore names of the files that were read whole and merged */
export function planMeeting(names: readonly string[], deviceId: string, readBefore: ReadonlySet<string>): MeetingPlan {
  const files = names.flatMap((name) => parseMeetingFile(name) ?? []);
  const started = names.flatMap((name) => parseMeetingFile(name.replace(/\.part$/, '')) ?? []);
  const own = started.filter((file) => file.deviceId === deviceId).map(({ number }) => number);
  return {
    toRead: files
      .filter((file) => file.deviceId !== deviceId && !readBefore.has(file.name))
      .sort((one, other) => one.number - other.number || compareText(one.deviceId, other.deviceId)),
    ownName: meetingFileName(deviceId, Math.max(0, ...own) + 1),
  };
}

/** For each row, by table and id, the stamps of the versions that are in the folder. */
export type Published = ReadonlyMap<string, readonly Stamp[]>;

/**
 * What this device knows and the folder does not, with the rows that it refers to. Empty where the folder knows all of it.
 * Rows that were never stamped count as known once any version of theirs is.
 */
export function unpublished(records: RecordTables, published: Published): RecordTables {
  const isNew = (key: string, stamp: Stamp | undefined) =>
    !(published.get(key) ?? []).some((known) => ['same', 'older'].includes(compareStamps(stamp, known)));
  const rows = Object.fromEntries(
    Object.entries(records.rows).map(([table, list]) => [
      table,
      list.filter((row) => isNew(rowKey(table, row.id), row.stamp)),
    ]),
  );
  const rivals = records.rivals.filter((rival) => isNew(rivalKey(rival), (rival.row as RowVersion).stamp));
  const gone = records.gone.filter((mark) => isNew(rowKey('gone', mark.id), mark.stamp));
  return { rows: withParents(rows, records.rows), rivals, gone };
}

/** What a file in the folder, read or written, makes known. */
export function publish(published: Published, records: RecordTables): Published {
  const all = new Map(published);
  const add = (key: string, stamp: Stamp = {}) => all.set(key, [...(all.get(key) ?? []), stamp]);
  for (const [table, list] of Object.entries(records.rows))
    for (const row of list) add(rowKey(table, row.id), row.stamp);
  for (const rival of records.rivals) add(rivalKey(rival), (rival.row as RowVersion).stamp);
  for (const mark of records.gone) add(rowKey('gone', mark.id), mark.stamp);
  return all;
}

/** Tables that others refer to, and by which field; grandchildren first. */
const PARENTS = [
  ['takes', 'id'],
  ['surveys', 'surveyId'],
  ['visits', 'visitId'],
  ['instruments', 'instrumentId'],
] as const;

type Rows = RecordTables['rows'];

function withParents(chosen: Rows, all: Rows): Rows {
  const rows: Record<string, readonly RowVersion[]> = { ...chosen };
  for (const [table, field] of PARENTS) {
    const wanted = new Set(
      Object.entries(rows).flatMap(([name, list]) =>
        isChild(name, field) ? list.map((row) => fieldOf(row, field)) : [],
      ),
    );
    const there = new Set((rows[table] ?? []).map(({ id }) => id));
    const missing = (all[table] ?? []).filter(({ id }) => wanted.has(id) && !there.has(id));
    if (missing.length > 0) rows[table] = [...(rows[table] ?? []), ...missing];
  }
  return rows;
}

/** Only a sound is called by the id of its take. */
function isChild(table: string, field: string): boolean {
  return field === 'id' ? table === 'sounds' : true;
}

function fieldOf(row: RowVersion, field: string): unknown {
  return (row as unknown as Record<string, unknown>)[field];
}
