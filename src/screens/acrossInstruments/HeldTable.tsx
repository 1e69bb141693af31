import { formatDate, formatYears } from '../../piano/format.ts';
import type { HeldJob } from '../../stability/acrossInstruments/heldGroups.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { blockWords, endWords, jobKey, workWords } from './heldWords.ts';

const words = texts.held.table;

const COLUMNS: readonly Column<HeldJob>[] = [
  {
    key: 'instrument',
    title: words.instrument,
    isRowHeader: true,
    cell: ({ instrument }) => (
      <a href={routeToHref({ screen: 'instrument', instrumentId: instrument.id })}>{instrument.name}</a>
    ),
  },
  { key: 'block', title: words.block, cell: ({ blockKind }) => blockWords(blockKind) },
  { key: 'work', title: words.work, cell: ({ held }) => workWords(held.job) },
  { key: 'done', title: words.doneOn, cell: ({ held }) => formatDate(held.job.doneOn) },
  {
    key: 'watched',
    title: words.watched,
    cell: ({ held }) => words.from(formatDate(held.fromOn), formatDate(held.toOn)),
  },
  {
    key: 'years',
    title: words.years,
    cell: ({ held }) => words.yearsFrom(formatYears(held.span.entryYears), formatYears(held.span.exitYears)),
  },
  { key: 'result', title: words.result, cell: endWords },
];

export function HeldTable({ jobs }: { readonly jobs: readonly HeldJob[] }) {
  return <DataTable caption={words.caption} columns={COLUMNS} rows={jobs} rowKey={jobKey} stacksWhenNarrow />;
}
