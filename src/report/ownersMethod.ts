/** How the figures came about and how sure they are, for the small print. */
import { formatDate, formatSpreadCents } from '../piano/format.ts';
import { formatCentsSize } from '../piano/formatPlain.ts';
import type { JudgedRecords } from './judgedRecords.ts';
import type { ReportWords } from './words.ts';

export function methodSentences(records: JudgedRecords, words: ReportWords): string[] {
  const { history, thresholdCentsPerYear } = records;
  const leftOut = history.leftOut.unusable + history.leftOut['string-unknown'];
  return [
    ...readingsSentence(records, words),
    words.method.drift,
    words.method.certainty(formatCentsSize(thresholdCentsPerYear)),
    words.method.falseBeats,
    ...(leftOut > 0 ? [words.method.leftOut(leftOut)] : []),
    words.method.made,
  ];
}

function readingsSentence(
  { history: { readings } }: JudgedRecords,
  { method: words, language }: ReportWords,
): string[] {
  const days = [...new Set(readings.map(({ visitedOn }) => visitedOn))].sort();
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const readingCount = words.readingCount(readings.length);
  const visits = words.fromTo(words.visitCount(days.length), formatDate(first, language), formatDate(last, language));
  const stated = readings
    .flatMap(({ standardUncertaintyCents }) => standardUncertaintyCents ?? [])
    .sort((a, b) => a - b);
  const middle = stated[stated.length >> 1];
  if (middle === undefined) return [words.readingsOnly(readingCount, visits)];
  return [words.readings(readingCount, visits, formatSpreadCents(middle))];
}
