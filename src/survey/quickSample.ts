/** Which notes a quick sample should take. */
import { breaksAfter, type RowBreaks, sectionsOf } from '../piano/surveyScope.ts';

/** Enough for a quarter of the usual notes, about a minute of playing. Chosen. */
export const USUAL_SAMPLE_COUNT = 20;

/** The fewest notes that a sample of this instrument has: both sides of every break, and never fewer than six. */
export function leastSampleCount(row: RowBreaks): number {
  const fewest = Math.max(FEWEST_NOTES, edgeNotes(row).length);
  return Math.min(fewest, row.compass.highestMidi - row.compass.lowestMidi + 1);
}

/** A median of fewer says little, and a note is judged against five neighbours at least. Chosen. */
const FEWEST_NOTES = 6;

/**
 * A sample of `count` notes: both sides of each strut and of the bass break, where a block that fails shows first and where the
 * bridges can be told apart; the rest spread so that the widest gap is as narrow as the count allows.
 * @param count taken to the nearest that is possible: from `leastSampleCount` to the whole compass
 * @returns notes in rising order
 */
export function quickSample(row: RowBreaks, count: number): number[] {
  const { lowestMidi, highestMidi } = row.compass;
  const wanted = Math.min(Math.max(Math.round(count), leastSampleCount(row)), highestMidi - lowestMidi + 1);
  const edges = edgeNotes(row);
  const gaps = gapsOf(row);
  const inGap = gaps.map(() => 0);
  for (let left = wanted - edges.length; left > 0; left -= 1) {
    const widest = indexOfWidest(gaps, inGap);
    if (widest === undefined) break;
    inGap[widest] = (inGap[widest] ?? 0) + 1;
  }
  const spread = gaps.flatMap((gap, index) => spreadIn(gap, inGap[index] ?? 0));
  return [...edges, ...spread].sort((a, b) => a - b);
}

function edgeNotes(row: RowBreaks): number[] {
  const both = breaksAfter(row).flatMap((midi) => [midi, midi + 1]);
  return [...new Set(both)].sort((a, b) => a - b);
}

/** Notes between two edge notes, or beyond the outermost one: an end is open where the compass ends and no edge note stands. */
type Gap = {
  readonly fromMidi: number;
  readonly noteCount: number;
  readonly opensBelow: boolean;
  readonly opensAbove: boolean;
};

function gapsOf(row: RowBreaks): Gap[] {
  const sections = sectionsOf(row);
  return sections.flatMap((section, index): Gap[] => {
    const opensBelow = index === 0;
    const opensAbove = index === sections.length - 1;
    const fromMidi = section.fromMidi + (opensBelow ? 0 : 1);
    const noteCount = section.toMidi - (opensAbove ? 0 : 1) - fromMidi + 1;
    return noteCount > 0 ? [{ fromMidi, noteCount, opensBelow, opensAbove }] : [];
  });
}

/** Distance from note to note once so many are in the gap; at an open end half of it is left over. */
function stepOf({ noteCount, opensBelow, opensAbove }: Gap, inside: number): number {
  const openEnds = Number(opensBelow) + Number(opensAbove);
  const spaces = inside + 1 - openEnds / 2;
  return spaces > 0 ? (noteCount + 1 - openEnds / 2) / spaces : Number.POSITIVE_INFINITY;
}

/** The gap that needs the next note most; undefined when all are full. */
function indexOfWidest(gaps: readonly Gap[], inGap: readonly number[]): number | undefined {
  let widest: number | undefined;
  let widestStep = 0;
  for (const [index, gap] of gaps.entries()) {
    const inside = inGap[index] ?? 0;
    const step = stepOf(gap, inside);
    if (inside >= gap.noteCount || step <= widestStep) continue;
    widest = index;
    widestStep = step;
  }
  return widest;
}

/** `count` notes evenly in the gap. Steps are never below one note, so none comes twice. */
function spreadIn(gap: Gap, count: number): number[] {
  const step = stepOf(gap, count);
  const first = gap.opensBelow ? 0.5 + step / 2 : step;
  return Array.from({ length: count }, (_, index) => gap.fromMidi - 1 + Math.round(first + index * step));
}
