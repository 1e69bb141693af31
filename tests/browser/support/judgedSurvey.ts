/** What the page was told of a played survey against what was played. */
import type { PlayedNote } from './playedNotes.ts';
import type { ToldTake } from './watchedMicrophone.ts';

/** A take is that of the note whose strike lies within this of its own. */
const SAME_STRIKE_S = 0.4;
/** Short notes in noise at 20 dB scatter by some tenths; a note taken for another is off by a hundred. */
export const RIGHT_WITHIN_CENTS = 1.5;

export type JudgedSurvey = {
  /** When listening began, on the clock of the sound: the first sound in every recording is a note. */
  readonly beganS: number;
  /** Takes that pass as good and are of another note, or off. */
  readonly wrong: readonly ToldTake[];
  /** Takes that pass as good where nobody played. */
  readonly invented: readonly ToldTake[];
  /** Notes without a good take: they have to be played again. */
  readonly again: readonly { readonly note: PlayedNote; readonly takes: readonly ToldTake[] }[];
};

export function judgeSurvey(played: readonly PlayedNote[], told: readonly ToldTake[]): JudgedSurvey {
  const beganS = (played[0]?.onsetS ?? 0) - (told[0]?.onsetS ?? 0);
  const isOf = (note: PlayedNote, take: ToldTake) => Math.abs(take.onsetS + beganS - note.onsetS) < SAME_STRIKE_S;
  const notes = played.map((note) => ({ note, takes: told.filter((take) => isOf(note, take)) }));
  const isRight = (note: PlayedNote, take: ToldTake) =>
    take.midi === note.midi && Math.abs(take.offsetCents - note.offsetCents) <= RIGHT_WITHIN_CENTS;
  return {
    beganS,
    wrong: notes.flatMap(({ note, takes }) => takes.filter((take) => take.isUsable && !isRight(note, take))),
    invented: told.filter((take) => take.isUsable && !played.some((note) => isOf(note, take))),
    again: notes.filter(({ note, takes }) => !takes.some((take) => take.isUsable && isRight(note, take))),
  };
}
