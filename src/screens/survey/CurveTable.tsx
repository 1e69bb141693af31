import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.charts;

/** All figures as they are to be read. */
export type CurveRow = {
  readonly key: string;
  readonly name: string;
  readonly measured: string;
  readonly curve: string;
  readonly ratio: string;
};

type Props = {
  readonly caption: string;
  readonly measuredTitle: string;
  readonly curveTitle: string;
  readonly rows: readonly CurveRow[];
};

/** A chart's numbers, for reading out and for copying. */
export function CurveTable({ caption, measuredTitle, curveTitle, rows }: Props) {
  const columns: readonly Column<CurveRow>[] = [
    { key: 'note', title: words.note, isRowHeader: true, cell: ({ name }) => name },
    { key: 'measured', title: measuredTitle, isNumber: true, cell: ({ measured }) => measured },
    { key: 'curve', title: curveTitle, isNumber: true, cell: ({ curve }) => curve },
    { key: 'ratio', title: words.ratio, isNumber: true, cell: ({ ratio }) => ratio },
  ];
  return (
    <Disclosure summary={words.showTable}>
      <DataTable caption={caption} columns={columns} rows={rows} rowKey={({ key }) => key} stacksWhenNarrow />
    </Disclosure>
  );
}
