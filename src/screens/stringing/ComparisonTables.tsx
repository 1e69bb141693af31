import { formatNote, formatNoteRange } from '../../piano/format.ts';
import { formatGrowth, formatKilonewtons } from '../../piano/formatStringing.ts';
import type { ScaleComparison, TotalComparison } from '../../stringing/scale/compareScales.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import type { ComparedNote } from './comparisonRows.ts';
import { DRAWN } from './scaleChart.ts';

const words = texts.stringing.compare;

const NOTE_COLUMNS: readonly Column<ComparedNote>[] = [
  { key: 'note', title: words.columns.note, isRowHeader: true, cell: ({ midi }) => formatNote(midi) },
  { key: 'wire', title: words.columns.wire, isNumber: true, cell: ({ wire }) => wire },
  { key: 'length', title: words.columns.length, isNumber: true, cell: ({ length }) => length },
  ...DRAWN.map((drawn) => ({
    key: drawn,
    title: words.columns[drawn],
    isNumber: true,
    cell: ({ figures }: ComparedNote) => figures[drawn],
  })),
];

const SECTION_COLUMNS: readonly Column<TotalComparison>[] = [
  {
    key: 'section',
    title: words.section,
    isRowHeader: true,
    cell: ({ fromMidi, toMidi }) => formatNoteRange(fromMidi, toMidi),
  },
  {
    key: 'before',
    title: words.sectionColumns.before,
    isNumber: true,
    cell: ({ beforeN }) => formatKilonewtons(beforeN),
  },
  {
    key: 'planned',
    title: words.sectionColumns.planned,
    isNumber: true,
    cell: ({ plannedN }) => formatKilonewtons(plannedN),
  },
  { key: 'growth', title: words.sectionColumns.growth, isNumber: true, cell: ({ growth }) => formatGrowth(growth) },
];

type Props = { readonly comparison: ScaleComparison; readonly notes: readonly ComparedNote[] };

/** Sections, the notes that differ, and all of them folded. */
export function ComparisonTables({ comparison, notes }: Props) {
  const different = notes.filter(({ isDifferent }) => isDifferent);
  return (
    <>
      <DataTable
        caption={words.sections}
        columns={SECTION_COLUMNS}
        rows={comparison.sections}
        rowKey={({ fromMidi }) => String(fromMidi)}
        stacksWhenNarrow
      />
      {different.length === 0 ? <p>{words.changesNone}</p> : <NoteTable caption={words.changes} notes={different} />}
      <Disclosure summary={words.all} isMadeWhenOpened>
        <NoteTable caption={words.caption} notes={notes} />
      </Disclosure>
    </>
  );
}

/** A table that would be longer than this stands folded. */
const LONGEST_OPEN = 15;

function NoteTable({ caption, notes }: { readonly caption: string; readonly notes: readonly ComparedNote[] }) {
  const table = (
    <DataTable
      caption={caption}
      columns={NOTE_COLUMNS}
      rows={notes}
      rowKey={({ midi }) => String(midi)}
      stacksWhenNarrow
    />
  );
  return notes.length > LONGEST_OPEN && caption === words.changes ? (
    <Disclosure summary={`${caption} (${notes.length})`} isMadeWhenOpened>
      {table}
    </Disclosure>
  ) : (
    table
  );
}
