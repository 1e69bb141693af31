/**
 * Edits of a row that has rivals. A version vector cannot say "newer than the shown version, but not than that rival" where this device
 * wrote the rival itself; so a rival that an edit would cover gets a mark of its own into its stamp and stays, until somebody chooses.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { compareStamps, editedStamp, joinedStamp, type Stamp } from '../../piano/stamp.ts';
import { toHex } from '../archive/taggedJson.ts';
import type { KnownRow } from './mergeRow.ts';
import { compareShown, type RowVersion, versionText } from './rowVersion.ts';

/** The shown version was edited: newer than what was shown, and no rival goes. A deletion is an edit as well. */
export function editedRow<Row extends RowVersion>(known: KnownRow<Row>, edited: Row, deviceId: string): KnownRow<Row> {
  const [shown, ...rivals] = known.versions;
  const row = { ...edited, stamp: editedStamp(joinedStamp(shown?.stamp, coveredBy(known.gone)), deviceId) };
  return {
    versions: [row, ...rivals.map((rival) => keptApart(rival, row.stamp, deviceId))].sort(compareShown),
    gone: known.gone,
  };
}

function coveredBy(gone: readonly Stamp[]): Stamp {
  return gone.reduce<Stamp>((all, stamp) => joinedStamp(all, stamp), {});
}

function keptApart<Row extends RowVersion>(rival: Row, stamp: Stamp, deviceId: string): Row {
  const order = compareStamps(rival.stamp, stamp);
  if (order === 'apart' || order === 'newer') return rival;
  const digest = toHex(sha256(new TextEncoder().encode(versionText(rival)))).slice(0, 16);
  return { ...rival, stamp: { ...rival.stamp, [`${deviceId}~${digest}`]: 1 } };
}

/** The row as somebody chose it, which may be one of the versions or put together from several: newer than all of them. */
export function chosenRow<Row extends RowVersion>(known: KnownRow<Row>, choice: Row, deviceId: string): KnownRow<Row> {
  return { versions: [{ ...choice, stamp: editedStamp(stampOfAll(known), deviceId) }], gone: known.gone };
}

/** The stamp with which a row is deleted for good by somebody who sees all its versions. */
export function goneStamp(known: KnownRow, deviceId: string): Stamp {
  return editedStamp(stampOfAll(known), deviceId);
}

function stampOfAll({ versions, gone }: KnownRow): Stamp {
  return versions.reduce<Stamp>((all, { stamp }) => joinedStamp(all, stamp), coveredBy(gone));
}
