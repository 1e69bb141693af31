/** How a string's false beat is called: three steps of its weight, a reading without one, and readings that cannot tell. */
import type { NoteReading } from '../../piano/reading.ts';
import { HARDLY_HEARD_WEIGHT } from '../../stringing/decisions/suggestDecision.ts';
import { type FalseBeat, falseBeatOf } from '../../stringing/falseBeats/falseBeatList.ts';

export type Audibility = 'plain' | 'faint' | 'hardly' | 'none' | 'undecided' | 'missing';

/** From this weight on a beat is called plain. Chosen: about the loudest partial with a beat of 3 dB. It names, and decides nothing. */
const PLAIN_WEIGHT = 0.12;

export const BEATING: readonly Audibility[] = ['plain', 'faint', 'hardly'];

export type HeardString = { readonly audibility: Audibility; readonly falseBeat: FalseBeat | null };

/** @param reading undefined where the string was not recorded by itself */
export function heardString(reading: NoteReading | undefined): HeardString {
  if (!reading) return { audibility: 'missing', falseBeat: null };
  const falseBeat = reading.quality.isUsable ? (falseBeatOf(reading) ?? null) : null;
  if (falseBeat) return { audibility: stepOf(falseBeat.weight), falseBeat };
  const isClean = reading.quality.isUsable && reading.beating.kind === 'none';
  return { audibility: isClean ? 'none' : 'undecided', falseBeat: null };
}

function stepOf(weight: number): Audibility {
  if (weight >= PLAIN_WEIGHT) return 'plain';
  return weight >= HARDLY_HEARD_WEIGHT ? 'faint' : 'hardly';
}
