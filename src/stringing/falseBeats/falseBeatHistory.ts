/** One string's false beats from visit to visit, with work done in between. */
import type { NoteReading, StringPosition } from '../../piano/reading.ts';
import { type BeatingPartial, type BeatPattern, falseBeatOf } from './falseBeatList.ts';

export type BeatSurvey = { readonly recordedOn: string; readonly readings: readonly NoteReading[] };

export type BeatVisit = {
  readonly recordedOn: string;
  readonly state: 'beats' | 'none' | 'undecided' | 'not recorded';
  readonly weight: number | null;
  /** Heaviest first. */
  readonly partials: readonly BeatingPartial[];
  readonly pattern: BeatPattern | null;
};

/** In order of date. A survey of open unisons does not tell single strings: there the string was not recorded. */
export function falseBeatHistory(
  surveys: readonly BeatSurvey[],
  string: { readonly midi: number; readonly stringPosition: StringPosition },
): BeatVisit[] {
  return [...surveys]
    .sort((a, b) => a.recordedOn.localeCompare(b.recordedOn))
    .map(({ recordedOn, readings }) => {
      const reading = readings.find(
        ({ midi, stringPosition }) =>
          midi === string.midi && stringPosition === string.stringPosition && stringPosition !== 0,
      );
      return { recordedOn, ...visitOf(reading) };
    });
}

function visitOf(reading: NoteReading | undefined): Omit<BeatVisit, 'recordedOn'> {
  const nothing = { weight: null, partials: [], pattern: null };
  if (!reading) return { state: 'not recorded', ...nothing };
  if (!reading.quality.isUsable) return { state: 'undecided', ...nothing };
  const beat = falseBeatOf(reading);
  if (beat) return { state: 'beats', weight: beat.weight, partials: beat.partials, pattern: beat.pattern };
  return { state: reading.beating.kind === 'none' ? 'none' : 'undecided', ...nothing };
}
