import { useState } from 'react';
import { formatNumber } from '../../piano/format.ts';
import { formatWireMm } from '../../piano/formatStringing.ts';
import type { OwnWireGrade } from '../../piano/stringingRecords.ts';
import { ownGrade, PUBLISHED_GRADES, type WireGrade } from '../../piano/wireGrade.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { GradeDialog } from './GradeDialog.tsx';

const words = texts.stringing.grades;

type Props = { readonly records: Records; readonly ownGrades: readonly OwnWireGrade[] };

type Line = { readonly grade: WireGrade; readonly own: OwnWireGrade | null };

/** Published wire tables, and those of the workshop's own. */
export function GradesSection({ records, ownGrades }: Props) {
  const [editing, setEditing] = useState<OwnWireGrade | 'new' | null>(null);
  const lines: readonly Line[] = [
    ...ownGrades.map((own) => ({ grade: ownGrade(own), own })),
    ...PUBLISHED_GRADES.map((grade) => ({ grade, own: null })),
  ];
  const actions: Column<Line> = {
    key: 'actions',
    title: words.change,
    cell: ({ own }) =>
      own && (
        <>
          <Button look="quiet" label={words.changeLabel(own.name)} onPress={() => setEditing(own)}>
            {words.change}
          </Button>
          <DeleteButton
            records={records}
            target={{ table: 'wireGrades' as const, id: own.id }}
            message={words.removed(own.name)}
            label={words.removeLabel(own.name)}
          >
            {words.remove}
          </DeleteButton>
        </>
      ),
  };
  return (
    <Section title={words.title} note={words.note}>
      {ownGrades.length === 0 && <p>{words.noneOwn}</p>}
      <DataTable
        caption={words.caption}
        columns={ownGrades.length > 0 ? [...COLUMNS, actions] : COLUMNS}
        rows={lines}
        rowKey={({ grade, own }) => own?.id ?? grade.name}
        stacksWhenNarrow
      />
      <Button onPress={() => setEditing('new')}>{words.add}</Button>
      {editing && (
        <GradeDialog
          records={records}
          grade={editing === 'new' ? null : editing}
          ownGrades={ownGrades}
          onClose={() => setEditing(null)}
        />
      )}
    </Section>
  );
}

const COLUMNS: readonly Column<Line>[] = [
  { key: 'name', title: words.columns.name, isRowHeader: true, cell: ({ grade }) => grade.name },
  {
    key: 'source',
    title: words.columns.source,
    cell: ({ grade, own }) => (own ? grade.source : `${grade.source} (${words.standing.secondary})`),
  },
  { key: 'range', title: words.columns.range, isNumber: true, cell: ({ grade }) => rangeText(grade) },
  {
    key: 'modulus',
    title: words.columns.modulus,
    isNumber: true,
    cell: ({ grade }) => `${formatNumber(grade.youngsModulusGpa, 0)} GPa`,
  },
  {
    key: 'density',
    title: words.columns.density,
    isNumber: true,
    cell: ({ grade }) => `${formatNumber(grade.densityKgPerM3, 0)} kg/m³`,
  },
];

function rangeText({ rows }: WireGrade): string {
  const [first, last] = [rows[0], rows.at(-1)];
  return words.range(formatWireMm(first?.diameterMm ?? null), formatWireMm(last?.diameterMm ?? null));
}
