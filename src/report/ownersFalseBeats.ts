/** False beats before and after the work, and now, for the owner's page. */
import { formatDate, formatNote } from '../piano/format.ts';
import { type BeatCount, falseBeatsOf } from './falseBeats.ts';
import type { JudgedRecords } from './judgedRecords.ts';
import { fewNames, stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

export type BeatRow = { readonly when: string; readonly withFalseBeat: number; readonly judged: number };

export type BeatSection = {
  readonly title: string;
  readonly explanation: string;
  readonly rows: readonly BeatRow[];
  readonly sentences: readonly string[];
};

/** So many strings with a false beat are named. */
const MOST_NAMED = 12;

export function beatSection(records: JudgedRecords, words: ReportWords): BeatSection {
  const { title, explanation, ...own } = words.falseBeats;
  const { work, latest } = falseBeatsOf(records);
  if (latest === null) return { title, explanation, rows: [], sentences: [own.nothing] };
  const row = (named: (date: string) => string, { on, withFalseBeat, judged }: BeatCount): BeatRow => ({
    when: named(formatDate(on, words.language)),
    withFalseBeat,
    judged,
  });
  // Where only centre strings were read, saying so for each is noise.
  const isAllCentre = latest.strings.every(({ stringPosition }) => stringPosition === 2);
  const names = latest.strings.map((string) => (isAllCentre ? formatNote(string.midi) : stringName(string, words)));
  return {
    title,
    explanation,
    rows: [...(work ? [row(own.before, work.before), row(own.after, work.after)] : []), row(own.latest, latest)],
    sentences: [
      ...(work ? [own.sameStrings] : []),
      names.length === 0 ? own.none : own.strings(fewNames(names, words, MOST_NAMED)),
      ...(latest.notAssessable > 0 ? [own.notAssessable(latest.notAssessable)] : []),
    ],
  };
}
