/**
 * How many strings a note has where nobody said: singles A0 to F♯1, pairs G1 to B2, three from C3 up (227 strings in all on 88 notes).
 * Standing: common practice, one published count; scales differ by several notes, so it may suggest and never decide.
 */
const HIGHEST_SINGLE_MIDI = 30;
const HIGHEST_PAIR_MIDI = 47;

/** @example usualStringCount(60) // 3 */
export function usualStringCount(midi: number): 1 | 2 | 3 {
  if (midi <= HIGHEST_SINGLE_MIDI) return 1;
  return midi <= HIGHEST_PAIR_MIDI ? 2 : 3;
}
