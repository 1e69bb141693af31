/** The answer to humidity in sentences. */
import { formatResponse } from '../../piano/formatStability.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { medianOf, robustScatter } from '../../piano/robustStatistics.ts';
import type { StringResponse } from '../../stability/drift/driftDetail.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stability.humidity;
/** C3 to C5. */
const isMiddle = ({ midi }: StringResponse) => midi >= 48 && midi <= 72;
/** Fewer notes with both outer strings say nothing about unisons. Chosen. */
const LEAST_PAIRS = 10;

export function humiditySentences(strings: readonly StringResponse[]): string[] {
  const middle = strings.filter(isMiddle);
  const sentences: string[] = [];
  if (middle.length > 0) sentences.push(words.middle(medianResponse(middle.map((string) => string.centsPerPct))));
  const pairs = unisonDifferences(strings);
  if (pairs.length >= LEAST_PAIRS) sentences.push(words.split(medianResponse(pairs)));
  return sentences;
}

function medianResponse(values: readonly number[]): string {
  const median = medianOf(values);
  return formatResponse(median, (1.25 * robustScatter(values, median)) / Math.sqrt(values.length));
}

/** Right string less left string of each note that has both. */
function unisonDifferences(strings: readonly StringResponse[]): number[] {
  const at = (midi: number, position: StringPosition) =>
    strings.find((one) => one.midi === midi && one.stringPosition === position)?.centsPerPct;
  return [...new Set(strings.map((string) => string.midi))].flatMap((midi) => {
    const [left, right] = [at(midi, 1), at(midi, 3)];
    return left === undefined || right === undefined ? [] : [right - left];
  });
}
