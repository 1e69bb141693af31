import { formatNoteRange } from '../../piano/format.ts';
import { formatKilonewtons, formatTonnes } from '../../piano/formatStringing.ts';
import type { SectionFigures } from '../../stringing/scale/analyseScale.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.scale.sections;

const COLUMNS: readonly Column<SectionFigures>[] = [
  {
    key: 'section',
    title: words.section,
    isRowHeader: true,
    cell: ({ fromMidi, toMidi }) => formatNoteRange(fromMidi, toMidi),
  },
  { key: 'strings', title: words.strings, isNumber: true, cell: ({ stringCount }) => stringCount },
  { key: 'pull', title: words.pull, isNumber: true, cell: ({ tensionN }) => formatKilonewtons(tensionN) },
  { key: 'tonnes', title: words.tonnes, isNumber: true, cell: ({ tensionN }) => formatTonnes(tensionN) },
  { key: 'unknown', title: words.unknown, isNumber: true, cell: ({ unknownNoteCount }) => unknownNoteCount },
];

export function SectionTable({ sections }: { readonly sections: readonly SectionFigures[] }) {
  return (
    <DataTable
      caption={words.caption}
      columns={COLUMNS}
      rows={sections}
      rowKey={({ fromMidi }) => String(fromMidi)}
      stacksWhenNarrow
    />
  );
}
