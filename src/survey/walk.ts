/** Where a walk up or down the compass goes next. */

/**
 * The direction of the walk: 1 up, −1 down, undefined while there is none. A walk is established once three steps in a row went
 * the same way by one or two notes (a key may be skipped); the same note again is no step.
 * @param heardMidi notes in the order played
 */
export function walkDirection(heardMidi: readonly number[]): 1 | -1 | undefined {
  const distinct = heardMidi.filter((midi, index) => midi !== heardMidi[index - 1]).slice(-1 - STEPS_OF_A_WALK);
  if (distinct.length <= STEPS_OF_A_WALK) return undefined;
  const steps = distinct.slice(1).map((midi, index) => midi - (distinct[index] ?? midi));
  if (steps.every((step) => step >= 1 && step <= LARGEST_STEP)) return 1;
  if (steps.every((step) => step <= -1 && step >= -LARGEST_STEP)) return -1;
  return undefined;
}

/**
 * The note that a walk would bring next, undefined while there is none.
 * @example nextOfWalk([60, 61, 61, 62, 64]) // 65
 */
export function nextOfWalk(heardMidi: readonly number[]): number | undefined {
  const direction = walkDirection(heardMidi);
  const last = heardMidi.at(-1);
  return direction === undefined || last === undefined ? undefined : last + direction;
}

const STEPS_OF_A_WALK = 3;
const LARGEST_STEP = 2;
