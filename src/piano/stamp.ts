/**
 * What the records keep beside a row so that two people's records can be merged and a deletion undone.
 * Rows of programs before version 4 of the records have none of it.
 */

/**
 * How often each device has edited a row: a version vector (Parker et al., IEEE Trans. Softw. Eng. SE-9 (1983) 240–247). One row is
 * newer than another where none of its counts is smaller and one is larger; where each has a larger one, both were edited apart.
 */
export type Stamp = Readonly<Record<string, number>>;

export type Stamped = {
  readonly stamp?: Stamp;
  /** ISO 8601 date and time; absent in a row that was not deleted. */
  readonly deletedAt?: string;
  /** The same for all rows that one deletion took, so that they come back together. */
  readonly deletionId?: string;
};

/** The stamp of a row that was edited on a device, from what was stored before. */
export function editedStamp(before: Stamp | undefined, deviceId: string): Stamp {
  return { ...before, [deviceId]: (before?.[deviceId] ?? 0) + 1 };
}

/** The smallest stamp that is at least as new as both. */
export function joinedStamp(one: Stamp = {}, other: Stamp = {}): Stamp {
  const devices = [...new Set([...Object.keys(one), ...Object.keys(other)])].sort();
  return Object.fromEntries(devices.map((device) => [device, Math.max(one[device] ?? 0, other[device] ?? 0)]));
}

/** @example compareStamps({ a: 2 }, { a: 1 }) // 'newer' */
export function compareStamps(one: Stamp = {}, other: Stamp = {}): 'same' | 'newer' | 'older' | 'apart' {
  const devices = [...Object.keys(one), ...Object.keys(other)];
  const isAhead = devices.some((device) => (one[device] ?? 0) > (other[device] ?? 0));
  const isBehind = devices.some((device) => (one[device] ?? 0) < (other[device] ?? 0));
  if (isAhead && isBehind) return 'apart';
  if (isAhead) return 'newer';
  return isBehind ? 'older' : 'same';
}
