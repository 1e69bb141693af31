import { formatCentsUncertainty, formatCentsValue, formatNote } from '../../piano/format.ts';
import type { NoteChange } from '../../stability/change.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import { stringName } from './changeSeries.ts';

const words = texts.instrument.change;

const COLUMNS: readonly Column<NoteChange>[] = [
  { key: 'note', title: words.note1, isRowHeader: true, cell: (row) => formatNote(row.midi) },
  { key: 'string', title: words.string, cell: (row) => stringName(row.stringPosition) },
  {
    key: 'cents',
    title: words.cents,
    isNumber: true,
    cell: (row) => formatCentsValue(row.changeCents, row.standardUncertaintyCents),
  },
  {
    key: 'uncertainty',
    title: words.uncertainty,
    isNumber: true,
    cell: (row) => formatCentsUncertainty(row.standardUncertaintyCents),
  },
];

/** The chart's numbers, for reading out and for copying. */
export function ChangeTable({ notes }: { readonly notes: readonly NoteChange[] }) {
  return (
    <Disclosure summary={words.showTable}>
      <DataTable
        caption={words.tableCaption}
        columns={COLUMNS}
        rows={notes}
        rowKey={(row) => `${row.midi} ${row.stringPosition}`}
      />
    </Disclosure>
  );
}
