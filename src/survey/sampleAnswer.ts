/** What a survey of some of the notes can tell about all of them. */
import { standardNormalQuantile } from './standardNormalQuantile.ts';

/**
 * How far one string's change scatters from visit to visit where nothing moved by itself, one standard deviation: how well a
 * pin was set, one strike against another, and what two or three cents on single strings do in ordinary use. Standing: chosen.
 * Everything that a sample can see grows in proportion to it.
 */
const USUAL_CHANGE_SCATTER_CENTS = 0.7;

/** Something that moved by as much is seen nine times out of ten, and taken for real at most once in twenty where nothing moved. */
const SEEN_SHARE = 0.9;
const FALSE_ALARM_SHARE = 0.05;

/** A zone counts as seen where at least two of its notes were played: one alone may be a single pin. */
const NOTES_TO_SEE_A_ZONE = 2;

/** A median of normal values scatters by √(π/2) more than their mean (large samples; standing: definition). */
const MEDIAN_OVER_MEAN = Math.sqrt(Math.PI / 2);

export type SampleAnswer = {
  /** The smallest common movement of all strings that would be seen in the median, either way. */
  readonly uniformCents: number;
  /** Neighbouring notes that a zone must have, wherever it lies, to have two of the notes played in it. Null: it could hide anywhere. */
  readonly zoneNoteCount: number | null;
  /** How much flatter than the rest such a zone must have gone to be seen in those two notes; null as above. */
  readonly zoneCents: number | null;
};

/**
 * Model: the strings' changes scatter normally and independently by `scatterCents` about what moves them. A uniform movement is
 * looked for in the median. A zone is looked for as two neighbours of the sample, each pair in turn, below the mean of the
 * others; the many pairs are allowed for (C. E. Bonferroni 1936), which is on the safe side. Weather moves whole registers and
 * is not in the model: it has to be taken out first, and what is left of it adds to the scatter.
 * @param playedMidi notes of the sample, each once
 * @param allMidi notes of the compass, rising
 * @throws {RangeError} with fewer than four notes played, which answer nothing, or a scatter that is not above zero
 */
export function sampleAnswer(
  playedMidi: readonly number[],
  allMidi: readonly number[],
  scatterCents: number = USUAL_CHANGE_SCATTER_CENTS,
): SampleAnswer {
  if (playedMidi.length < FEWEST_PLAYED)
    throw new RangeError(`playedMidi must name at least ${FEWEST_PLAYED} notes, got ${playedMidi.length}`);
  if (!(scatterCents > 0)) throw new RangeError(`scatterCents must be above zero, got ${scatterCents}`);
  const count = playedMidi.length;
  const power = standardNormalQuantile(SEEN_SHARE);
  const uniformLimit = standardNormalQuantile(1 - FALSE_ALARM_SHARE / 2) + power;
  const zoneNoteCount = surelyHit(playedMidi, allMidi);
  const pairLimit = standardNormalQuantile(1 - FALSE_ALARM_SHARE / (count - 1)) + power;
  const pairScatter = scatterCents * Math.sqrt(1 / NOTES_TO_SEE_A_ZONE + 1 / (count - NOTES_TO_SEE_A_ZONE));
  return {
    uniformCents: (uniformLimit * MEDIAN_OVER_MEAN * scatterCents) / Math.sqrt(count),
    zoneNoteCount,
    zoneCents: zoneNoteCount === null ? null : pairLimit * pairScatter,
  };
}

export const FEWEST_PLAYED = 4;

/** The shortest run of neighbours that cannot lie so that fewer than two of them were played; null where none is so long. */
function surelyHit(playedMidi: readonly number[], allMidi: readonly number[]): number | null {
  const isPlayed = new Set(playedMidi);
  const places = allMidi.flatMap((midi, index) => (isPlayed.has(midi) ? [index] : []));
  const fences = [-1, ...places, allMidi.length];
  let longestMiss = 0;
  for (let index = NOTES_TO_SEE_A_ZONE; index < fences.length; index += 1)
    longestMiss = Math.max(longestMiss, (fences[index] ?? 0) - (fences[index - NOTES_TO_SEE_A_ZONE] ?? 0) - 1);
  return longestMiss >= allMidi.length ? null : longestMiss + 1;
}
