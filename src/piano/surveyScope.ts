/** Which notes a survey asks for: all of them, a sample, or one stretch. */
import { type Compass, isInCompass, notesOf } from './compass.ts';

export type SurveyScope =
  /** A few notes spread over the compass, for a quick answer about the whole. */
  | { readonly kind: 'sample'; readonly notesMidi: readonly number[] }
  /** Neighbours, both ends included: one stretch between two struts, say. */
  | { readonly kind: 'section'; readonly fromMidi: number; readonly toMidi: number }
  /** Notes that somebody chose one by one. */
  | { readonly kind: 'chosen'; readonly notesMidi: readonly number[] };

/** The notes asked for, from the lowest up; all of the compass where no scope is given. Notes outside the compass drop out. */
export function notesOfScope(compass: Compass, scope: SurveyScope | undefined): number[] {
  if (scope === undefined) return notesOf(compass);
  if (scope.kind === 'section')
    return notesOf(compass).filter((midi) => midi >= scope.fromMidi && midi <= scope.toMidi);
  return [...new Set(scope.notesMidi)].filter((midi) => isInCompass(compass, midi)).sort((a, b) => a - b);
}

/** What divides the row of strings. */
export type RowBreaks = {
  readonly compass: Compass;
  /** The highest note on the bass bridge; null where nobody said. */
  readonly bassBridgeTopMidi: number | null;
  /** Notes after which a plate strut breaks the row of pins. */
  readonly strutsAfterMidi: readonly number[];
};

export type RowSection = { readonly fromMidi: number; readonly toMidi: number };

/** The stretches between the bass break and the struts, from the lowest up: one for an instrument of which neither is known. */
export function sectionsOf(row: RowBreaks): RowSection[] {
  const { lowestMidi, highestMidi } = row.compass;
  const ends = [...breaksAfter(row), highestMidi];
  return ends.map((toMidi, index) => ({ fromMidi: index === 0 ? lowestMidi : (ends[index - 1] ?? 0) + 1, toMidi }));
}

/** Notes after which the row breaks, in rising order, each once; the compass's last note ends it anyway and is left out. */
export function breaksAfter({ compass, bassBridgeTopMidi, strutsAfterMidi }: RowBreaks): number[] {
  const all = [...strutsAfterMidi, ...(bassBridgeTopMidi === null ? [] : [bassBridgeTopMidi])];
  return [...new Set(all)]
    .filter((midi) => midi >= compass.lowestMidi && midi < compass.highestMidi)
    .sort((a, b) => a - b);
}
