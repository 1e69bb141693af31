/** How the instrument kept its pitch: the chart's data and the sentences beside it. */
import { formatHumidity, formatNoteRange } from '../piano/format.ts';
import { formatCentsSize } from '../piano/formatPlain.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { JudgedRecords } from './judgedRecords.ts';
import { type PitchCourse, pitchCourse } from './pitchCourse.ts';
import { slippingOf, slippingRanges } from './slipping.ts';
import { fewNames } from './stringWords.ts';
import type { ReportWords } from './words.ts';

export type CourseSection = {
  readonly title: string;
  readonly course: PitchCourse;
  /** What the second line stands for; null where there is none. */
  readonly partName: string | null;
  readonly sentences: readonly string[];
};

export function courseSection({ drift, visits }: JudgedRecords, words: ReportWords): CourseSection {
  const ranges = slippingRanges(slippingOf(drift));
  const course = pitchCourse(drift, visits, ranges);
  const names = ranges.map(({ fromMidi, toMidi }) => formatNoteRange(fromMidi, toMidi));
  return {
    title: words.course.title,
    course,
    partName: names.length === 0 ? null : words.course.part(fewNames(names, words, 3)),
    sentences: [
      course.steps.length === 0 ? words.course.nothing : words.course.explanation,
      ...humiditySentences(course, drift, words),
    ],
  };
}

function humiditySentences({ humidity, steps }: PitchCourse, drift: Drift, { course: words }: ReportWords): string[] {
  const values = humidity.map(({ humidityPct }) => humidityPct);
  if (values.length === 0) return [words.noHumidity];
  const range =
    values.length < 2 || steps.length > 0
      ? []
      : [words.humidityRange(formatHumidity(Math.min(...values)), formatHumidity(Math.max(...values)))];
  const response = typicalResponse(drift);
  if (response === null) return range;
  const cents = formatCentsSize(10 * response);
  return [...range, words.response(response > 0 ? words.toSharper(cents) : words.toFlatter(cents))];
}

/** Median over the notes, in cents per %RH; null where humidity is not known, or the response is not told from none. */
export function typicalResponse({ humidity }: Pick<Drift, 'humidity'>): number | null {
  const told = [...humidity].sort((a, b) => a.centsPerPct - b.centsPerPct)[humidity.length >> 1];
  return told && Math.abs(told.centsPerPct) > 2 * told.standardUncertainty ? told.centsPerPct : null;
}
