import type { Stamp } from '../../piano/stamp.ts';

/** The same text for the same stamp. @example stampTextOf({ b: 2, a: 1 }) // 'a:1 b:2' */
export function stampTextOf(stamp: Stamp = {}): string {
  return Object.keys(stamp)
    .filter((device) => stamp[device] !== 0)
    .sort()
    .map((device) => `${device}:${stamp[device]}`)
    .join(' ');
}
