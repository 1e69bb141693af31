/** One string among the others of its instrument: its key, its name and its address. */
import { formatNote } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';

export type StringPlace = { readonly midi: number; readonly stringPosition: StringPosition };

export function keyOf({ midi, stringPosition }: StringPlace): string {
  return `${midi}/${stringPosition}`;
}

export function isSameString(a: StringPlace, b: StringPlace): boolean {
  return a.midi === b.midi && a.stringPosition === b.stringPosition;
}

export function fromTheLowest(a: StringPlace, b: StringPlace): number {
  return a.midi - b.midi || a.stringPosition - b.stringPosition;
}

export function nameOf({ midi, stringPosition }: StringPlace): string {
  return texts.strings.name(formatNote(midi), texts.common.stringPosition[stringPosition] ?? '');
}

export function hrefOf(instrumentId: InstrumentId, { midi, stringPosition }: StringPlace): string {
  return routeToHref({ screen: 'string', instrumentId, midi, stringPosition });
}
