/**
 * The rules by which the versions of one row meet. What is known of a row is the set of its newest versions and of the stamps with which
 * it was deleted for good. Meeting is the union of both sides; then goes what is older than something else, and what somebody deleted
 * for good who had seen it. So it does not matter who meets whom in which order or how often, and no version goes but one whose successor's
 * author had it before his eyes.
 * Source of the version vectors: Parker et al., IEEE Trans. Softw. Eng. SE-9 (1983) 240–247.
 */
import { compareStamps, type Stamp } from '../../piano/stamp.ts';
import { rawKept, withKept } from './keptTakes.ts';
import { compareShown, compareText, haveSameContent, isOlder, type RowVersion } from './rowVersion.ts';
import { stampTextOf } from './stampText.ts';

export type KnownRow<Row extends RowVersion = RowVersion> = {
  /** None is newer than another. The first is the one that is shown; empty where the row was deleted for good. */
  readonly versions: readonly Row[];
  /** With which stamps it was deleted for good. */
  readonly gone: readonly Stamp[];
};

export const NOTHING_KNOWN: KnownRow<never> = { versions: [], gone: [] };

/** Commutative, associative and idempotent. */
export function mergeRow<Row extends RowVersion>(one: KnownRow<Row>, other: KnownRow<Row>): KnownRow<Row> {
  if (isUnknown(one) && isPlain(other)) return other; // as nearly all rows are that come to a new place
  if (isUnknown(other) && isPlain(one)) return one;
  const gone = newestStamps([...one.gone, ...other.gone]);
  const all = distinct([...one.versions, ...other.versions]).filter(
    (version) => !gone.some((stamp) => isSeen(version, stamp)),
  );
  const newest = all.filter((version) => !all.some((rival) => isOlder(version, rival)));
  return { versions: newest.sort(compareShown), gone };
}

function isUnknown({ versions, gone }: KnownRow): boolean {
  return versions.length === 0 && gone.length === 0;
}

function isPlain({ versions, gone }: KnownRow): boolean {
  return versions.length === 1 && gone.length === 0;
}

function isSeen({ stamp }: RowVersion, by: Stamp): boolean {
  const order = compareStamps(stamp, by);
  return order === 'older' || order === 'same';
}

function newestStamps(stamps: readonly Stamp[]): Stamp[] {
  const distinctStamps = new Map(stamps.map((stamp) => [stampTextOf(stamp), stamp]));
  const all = [...distinctStamps.entries()].sort(([one], [other]) => compareText(one, other)).map(([, stamp]) => stamp);
  return all.filter((stamp) => !all.some((other) => compareStamps(stamp, other) === 'older'));
}

/** Equal stamp and equal content are one version; where they differ in being the kept take, it is the kept one. */
function distinct<Row extends RowVersion>(versions: readonly Row[]): Row[] {
  const found: Row[] = [];
  for (const version of versions) {
    const index = found.findIndex(
      (one) => compareStamps(one.stamp, version.stamp) === 'same' && haveSameContent(one, version),
    );
    const before = found[index];
    if (before === undefined) found.push(version);
    else if (rawKept(version) && !rawKept(before)) found[index] = withKept(before, true);
  }
  return found;
}

/** Versions that differ from the shown one in what somebody entered or measured: for somebody to choose between. */
export function openRivals<Row extends RowVersion>({ versions: [shown, ...others] }: KnownRow<Row>): Row[] {
  return shown === undefined ? [] : others.filter((rival) => !haveSameContent(shown, rival));
}

/**
 * An archive that left fields out says nothing of them: its row takes them from ours, so that reading it back takes no owner's name away.
 * @param fields of this table that were left out
 */
export function withOurFields<Row extends RowVersion>(
  theirs: Row,
  ours: KnownRow<Row>,
  fields: readonly string[],
): Row {
  const [shown] = ours.versions;
  if (shown === undefined || fields.length === 0) return theirs;
  const kept = Object.entries(shown).filter(([key]) => fields.includes(key));
  return { ...theirs, ...Object.fromEntries(kept) };
}
