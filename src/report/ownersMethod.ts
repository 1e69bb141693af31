/** How the figures came about and how sure they are, for the small print. */
import { formatSpreadCents } from '../piano/format.ts';
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

function readingsSentence({ history: { readings } }: JudgedRecords, { method: words }: ReportWords): string[] {
  if (readings.length === 0) return [];
  const visits = new Set(readings.map(({ visitedOn }) => visitedOn)).size;
  const readingCount = words.readingCount(readings.length);
  const visitCount = words.visitCount(visits);
  const stated = readings
    .flatMap(({ standardUncertaintyCents }) => standardUncertaintyCents ?? [])
    .sort((a, b) => a - b);
  const middle = stated[stated.length >> 1];
  if (middle === undefined) return [words.readingsOnly(readingCount, visitCount)];
  return [words.readings(readingCount, visitCount, formatSpreadCents(middle))];
}
