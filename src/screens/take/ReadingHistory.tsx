import {
  formatCentsUncertainty,
  formatCentsValue,
  formatChangeCents,
  formatDate,
  NOT_MEASURED,
} from '../../piano/format.ts';
import type { Take } from '../../piano/instrument.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { texts } from '../../ui/texts.ts';
import { type HistoryRow, historyRows } from './readingHistory.ts';

const words = texts.sound.history;

const COLUMNS: readonly Column<HistoryRow>[] = [
  {
    key: 'version',
    title: words.version,
    isRowHeader: true,
    cell: ({ measured }) =>
      measured ? `${texts.common.productName} ${measured.programVersion}` : words.unknownVersion,
  },
  {
    key: 'date',
    title: words.date,
    cell: ({ measured }) => (measured ? formatDate(measured.measuredAt) : NOT_MEASURED),
  },
  {
    key: 'cents',
    title: words.cents,
    isNumber: true,
    cell: ({ reading }) => formatCentsValue(reading.offsetCents, reading.offsetStandardUncertaintyCents),
  },
  {
    key: 'uncertainty',
    title: words.uncertainty,
    isNumber: true,
    hidesWhenNarrow: true,
    cell: ({ reading }) => formatCentsUncertainty(reading.offsetStandardUncertaintyCents),
  },
  {
    key: 'change',
    title: words.change,
    isNumber: true,
    cell: ({ changeCents }) => (changeCents === null ? words.first : formatChangeCents(changeCents)),
  },
];

/** Every figure that this sound was ever given; the newest one counts. */
export function ReadingHistory({ take }: { readonly take: Take }) {
  const rows = historyRows(take);
  if (rows.length === 0) return null;
  return <DataTable caption={words.caption} columns={COLUMNS} rows={rows} rowKey={(row) => row.key} stacksWhenNarrow />;
}
