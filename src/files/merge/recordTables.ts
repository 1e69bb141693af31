/** The records of one device, or of one archive, as tables in memory, and how two of them meet. */
import { sha256 } from '@noble/hashes/sha2.js';
import type { Stamp } from '../../piano/stamp.ts';
import type { ArchivedGone, ArchivedRival, LeftOut } from '../archive/archiveContents.ts';
import { fieldsLeftOut } from '../archive/leaveOut.ts';
import { toHex } from '../archive/taggedJson.ts';
import { beforeMerging, type SlotTake, settleKept } from './keptTakes.ts';
import { type KnownRow, mergeRow, NOTHING_KNOWN, withOurFields } from './mergeRow.ts';
import { rowKey, tableOfKey } from './rowKeys.ts';
import { type RowVersion, versionText } from './rowVersion.ts';
import { stampTextOf } from './stampText.ts';

/** By the table's name in the records; `rivals` and `gone` stand apart. */
export type RecordTables = {
  readonly rows: Readonly<Record<string, readonly RowVersion[]>>;
  readonly rivals: readonly ArchivedRival[];
  readonly gone: readonly ArchivedGone[];
};

export const NO_RECORDS: RecordTables = { rows: {}, rivals: [], gone: [] };

export type MergeOptions = {
  /** ISO 8601: when rivals that were not known before are said to have met. */
  readonly now: string;
  /** What the archive of the other side left out. */
  readonly leftOut?: readonly LeftOut[];
};

/**
 * Commutative, associative and idempotent, but for `foundAt` of rivals: the earliest is kept.
 * @param ours keeps its fields where the other side left them out
 */
export function mergeTables(
  ours: RecordTables,
  theirs: RecordTables,
  { now, leftOut = [] }: MergeOptions,
): RecordTables {
  const [own, other] = [knownRows(ours), knownRows(theirs)];
  const foundAt = earliestMeetings([...ours.rivals, ...theirs.rivals]);
  const merged = createCollector((id) => foundAt.get(id) ?? now);
  for (const key of new Set([...own.keys(), ...other.keys()])) {
    const known = own.get(key) ?? nothingIn(key);
    const met = other.get(key) ?? nothingIn(key);
    const fields = leftOut.length === 0 ? [] : fieldsLeftOut(known.table, leftOut);
    const versions = fields.length === 0 ? met.versions : met.versions.map((row) => withOurFields(row, known, fields));
    merged.add(key, mergeRow(known, { versions, gone: met.gone }), [...known.deletions, ...met.deletions]);
  }
  return merged.result();
}

type KnownInTable = KnownRow & { readonly table: string; readonly deletions: readonly ArchivedGone[] };
type Gathering = { table: string; versions: RowVersion[]; gone: Stamp[]; deletions: ArchivedGone[] };

/** All that is known of each row, by table and id. */
function knownRows({ rows, rivals, gone }: RecordTables): Map<string, KnownInTable> {
  const known = new Map<string, Gathering>();
  const rowOf = (table: string, id: string): Gathering => {
    const key = rowKey(table, id);
    const found = known.get(key);
    if (found) return found;
    const made = { table, versions: [], gone: [], deletions: [] };
    known.set(key, made);
    return made;
  };
  for (const [table, list] of Object.entries(rows))
    for (const row of list) rowOf(table, row.id).versions.push(beforeMerging(row));
  for (const { table, rowId, row } of rivals) rowOf(table, rowId).versions.push(beforeMerging(row as RowVersion));
  for (const mark of gone) {
    const { gone: stamps, deletions } = rowOf(mark.table, mark.rowId);
    stamps.push(mark.stamp);
    deletions.push(mark);
  }
  return known;
}

function nothingIn(key: string): KnownInTable {
  return { ...NOTHING_KNOWN, table: tableOfKey(key), deletions: [] };
}

function earliestMeetings(rivals: readonly ArchivedRival[]): Map<string, string> {
  const earliest = new Map<string, string>();
  for (const { id, foundAt } of rivals) {
    const before = earliest.get(id);
    if (before === undefined || foundAt < before) earliest.set(id, foundAt);
  }
  return earliest;
}

function createCollector(foundAt: (rivalId: string) => string) {
  const rows: Record<string, RowVersion[]> = {};
  const rivals: ArchivedRival[] = [];
  const gone: ArchivedGone[] = [];
  return {
    add(key: string, { versions, gone: stamps }: KnownRow, deletions: readonly ArchivedGone[]) {
      const table = tableOfKey(key);
      const [shown, ...others] = versions;
      if (shown) {
        rows[table] ??= [];
        rows[table].push(shown);
      }
      for (const row of others) rivals.push(rivalRow(table, row, foundAt));
      for (const [index, stamp] of stamps.entries()) gone.push(goneRow(key, { stamp, index, deletions }));
    },
    result(): RecordTables {
      const { takes } = rows;
      if (takes) rows.takes = settleKept(takes as SlotTake[]);
      return { rows, rivals, gone };
    },
  };
}

/** Its id follows from its content, so that two devices that find the same rival have one. */
export function rivalRow(table: string, row: RowVersion, foundAt: (rivalId: string) => string): ArchivedRival {
  const digest = toHex(sha256(new TextEncoder().encode(versionText(row)))).slice(0, 16);
  const id = `${table}/${row.id}/${digest}`;
  const { instrumentId } = row as { instrumentId?: unknown };
  const own = table === 'instruments' ? row.id : typeof instrumentId === 'string' ? instrumentId : null;
  return { id, instrumentId: own, table, rowId: row.id, foundAt: foundAt(id), row };
}

type GoneFacts = { readonly stamp: Stamp; readonly index: number; readonly deletions: readonly ArchivedGone[] };

/** Deletions of one row that nobody knew of each other have an id each. */
function goneRow(key: string, { stamp, index, deletions }: GoneFacts): ArchivedGone {
  const same = deletions
    .filter((mark) => stampTextOf(mark.stamp) === stampTextOf(stamp))
    .sort((a, b) => (a.deletedAt < b.deletedAt ? -1 : 1));
  const [first] = same;
  if (first === undefined) throw new RangeError(`${key} has a deletion that nobody made`);
  return { ...first, id: index === 0 ? key : `${key}/${index + 1}` };
}
