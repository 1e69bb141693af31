/** Which strings a verdict means: failing zones without those that say the same again, and single pins outside them. */
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { JudgedPin } from '../stability/drift/judgedPin.ts';
import type { Zone } from '../stability/drift/zoneScan.ts';
import { isWithin, type NoteRange } from './pitchCourse.ts';

export type Slipping = {
  /** Strongest first, none overlapping another. */
  readonly zones: readonly Zone[];
  /** Flagged pins outside the zones, the fastest first. */
  readonly pins: readonly JudgedPin[];
};

export function slippingOf({ zones, pins }: Pick<Drift, 'zones' | 'pins'>): Slipping {
  const apart: Zone[] = [];
  for (const zone of zones) if (!apart.some((kept) => overlap(kept, zone))) apart.push(zone);
  const alone = pins.filter((pin) => pin.isFlagged && !isWithin(pin.midi, zones));
  return { zones: apart, pins: alone.sort((a, b) => (a.slip.centsPerYear ?? 0) - (b.slip.centsPerYear ?? 0)) };
}

export function slippingRanges({ zones, pins }: Slipping): NoteRange[] {
  return zones.length > 0 ? zones.map(rangeOf) : pins.map(({ midi }) => ({ fromMidi: midi, toMidi: midi }));
}

function rangeOf({ fromMidi, toMidi }: NoteRange): NoteRange {
  return { fromMidi, toMidi };
}

function overlap(one: NoteRange, other: NoteRange): boolean {
  return one.fromMidi <= other.toMidi && other.fromMidi <= one.toMidi;
}
