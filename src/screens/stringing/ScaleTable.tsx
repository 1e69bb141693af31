import { formatNote, NOT_MEASURED } from '../../piano/format.ts';
import type { ScaleFigures } from '../../stringing/scale/analyseScale.ts';
import type { NoteFigures } from '../../stringing/scale/noteFigures.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import { DRAWN, drawnText } from './scaleChart.ts';

const words = texts.stringing.scale;

const COLUMNS: readonly Column<NoteFigures>[] = [
  { key: 'note', title: words.tableColumns.note, isRowHeader: true, cell: ({ midi }) => formatNote(midi) },
  {
    key: 'strings',
    title: words.tableColumns.strings,
    isNumber: true,
    cell: ({ stringCount }) => stringCount ?? NOT_MEASURED,
  },
  ...DRAWN.map((drawn) => ({
    key: drawn,
    title: words.tableColumns[drawn],
    isNumber: true,
    cell: (note: NoteFigures) => drawnText(note, drawn),
  })),
  {
    key: 'grade',
    title: words.tableColumns.grade,
    cell: ({ strength }) => (strength?.known ? strength.gradeName : NOT_MEASURED),
  },
];

/** The chart's numbers, for reading out and for copying. */
export function ScaleTable({ scale }: { readonly scale: ScaleFigures }) {
  return (
    <Disclosure summary={words.table} isMadeWhenOpened>
      <DataTable
        caption={words.caption}
        columns={COLUMNS}
        rows={scale.notes}
        rowKey={({ midi }) => String(midi)}
        stacksWhenNarrow
      />
    </Disclosure>
  );
}
