/** What was done when: the dated work, and how often the instrument was measured. */
import { formatDate, formatNoteRange } from '../piano/format.ts';
import type { InstrumentEvent } from '../piano/instrument.ts';
import type { ReportRecords } from './reportRecords.ts';
import type { ReportWords } from './words.ts';

export type WorkRow = { readonly date: string; readonly what: string; readonly where: string; readonly remark: string };

export type WorkSection = {
  readonly title: string;
  /** Oldest first. */
  readonly rows: readonly WorkRow[];
  /** Says that there is none; null where there are rows. */
  readonly nothing: string | null;
  /** Work on wire, pins or block, for the chart. */
  readonly marks: readonly { readonly on: string; readonly label: string }[];
};

export function workSection({ events, visits, surveys }: ReportRecords, words: ReportWords): WorkSection {
  const measured = visits.filter(({ id }) => surveys.some(({ visitId }) => visitId === id));
  const days = measured.map(({ visitedOn }) => visitedOn).sort();
  const [first, last] = [days[0], days.at(-1)];
  const inOrder = [...events].sort((a, b) => (a.happenedOn < b.happenedOn ? -1 : 1));
  const rows = inOrder.map((event) => ({
    date: formatDate(event.happenedOn, words.language),
    what: words.work.kinds[event.kind],
    where: whereOf(event, words),
    remark: event.remark,
  }));
  const marks = inOrder.flatMap(({ kind, happenedOn }) =>
    kind === 'tuned' || first === undefined || happenedOn < first || happenedOn > (last ?? first)
      ? []
      : [{ on: happenedOn, label: words.work.kinds[kind] }],
  );
  return { title: words.work.title, rows, nothing: rows.length === 0 ? words.work.nothing : null, marks };
}

function whereOf({ fromMidi, toMidi }: InstrumentEvent, { work }: ReportWords): string {
  return fromMidi === null || toMidi === null ? work.whole : formatNoteRange(fromMidi, toMidi);
}
