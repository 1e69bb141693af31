/** Whether work on a string helped: its false beats before and at the next survey after. */
import type { NoteReading, StringPosition } from '../../piano/reading.ts';
import { comparePartial, type PartialTrial } from '../trials/partialTrial.ts';

export type AfterWork = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly outcome: 'gone' | 'less' | 'same' | 'more' | 'not recorded' | 'cannot tell';
  readonly partials: readonly PartialTrial[];
};

/** Another day, another season, another hand: half as much again as strikes of one visit differ by. Chosen. */
const SCATTER_FACTOR = 1.5;

/**
 * @param before the string's kept reading of the last survey before the work
 * @param after that of the first survey after it; undefined where the string was not recorded
 * @throws {RangeError} if the readings are of different strings
 */
export function afterWork(before: NoteReading, after: NoteReading | undefined): AfterWork {
  const string = { midi: before.midi, stringPosition: before.stringPosition };
  if (!after) return { ...string, outcome: 'not recorded', partials: [] };
  if (after.midi !== before.midi || after.stringPosition !== before.stringPosition)
    throw new RangeError(
      `before and after must be the same string, got ${before.midi}/${before.stringPosition} and ${after.midi}/${after.stringPosition}`,
    );
  if (!before.quality.isUsable || !after.quality.isUsable || before.stringPosition === 0)
    return { ...string, outcome: 'cannot tell', partials: [] };
  const numbers = [...before.partials, ...after.partials].map(({ partialNumber }) => partialNumber);
  const partials = [...new Set(numbers)]
    .sort((a, b) => a - b)
    .flatMap((number) => comparePartial(number, [before], [after], SCATTER_FACTOR) ?? []);
  const hadBeat = [before, after].some((reading) => reading.partials.some(({ beats }) => beats.length > 0));
  if (partials.length === 0 && hadBeat) return { ...string, outcome: 'cannot tell', partials };
  return { ...string, outcome: outcomeOf(partials), partials };
}

/** What a partial's beat weighs: its ratio at the partial's amplitude. */
function outcomeOf(partials: readonly PartialTrial[]): AfterWork['outcome'] {
  const isMore = partials.some(({ change }) => change === 'stronger' || change === 'appears');
  const lessened = partials.filter(({ change }) => change === 'stops' || change === 'weaker');
  if (isMore) return lessened.length > 0 ? weighed(partials) : 'more';
  if (lessened.length === 0) return 'same';
  const isGone = partials.every(({ after }) => after.rateHz === null);
  return isGone ? 'gone' : 'less';
}

function weighed(partials: readonly PartialTrial[]): 'less' | 'more' {
  const sum = partials.reduce((total, { levelDbfs, ratioChange }) => total + 10 ** (levelDbfs / 20) * ratioChange, 0);
  return sum < 0 ? 'less' : 'more';
}
