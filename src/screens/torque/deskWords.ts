/** What the desk says back, in words. */
import { formatNote } from '../../piano/format.ts';
import { formatTorqueInBoth } from '../../piano/formatTorque.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { texts } from '../../ui/texts.ts';
import type { PinAddress } from './pinRound.ts';
import type { TypedFault } from './typedTorque.ts';

const words = texts.torque.desk;

export type DeskSaid =
  | { readonly kind: 'fault'; readonly fault: TypedFault | 'note-not-asked'; readonly torqueNm: number | null }
  | {
      readonly kind: 'stored';
      readonly pin: PinAddress;
      readonly torqueNm: number;
      /** What stood there before; null where nothing did. */
      readonly formerNm: number | null;
      readonly isVeryLow: boolean;
      readonly isLast: boolean;
    }
  | { readonly kind: 'undone'; readonly pin: PinAddress };

/** @example pinName({ midi: 72, stringPosition: 2 }) // 'C5, centre string' */
export function pinName({ midi, stringPosition }: PinAddress): string {
  return words.pin(formatNote(midi), stringName(stringPosition));
}

export function stringName(position: StringPosition): string {
  return texts.common.stringPosition[position] ?? '';
}

export function faultWords({ fault, torqueNm }: Extract<DeskSaid, { kind: 'fault' }>): string {
  return fault === 'too-high' ? words.faults['too-high'](formatTorqueInBoth(torqueNm ?? 0)) : words.faults[fault];
}

export function newsWords(said: Exclude<DeskSaid, { kind: 'fault' }>): string {
  if (said.kind === 'undone') return words.undone(pinName(said.pin));
  const value = formatTorqueInBoth(said.torqueNm);
  const stored =
    said.formerNm === null
      ? words.stored(pinName(said.pin), value)
      : words.replaced(pinName(said.pin), value, formatTorqueInBoth(said.formerNm));
  return [stored, ...(said.isVeryLow ? [words.cautions.low] : []), ...(said.isLast ? [words.end] : [])].join(' ');
}
