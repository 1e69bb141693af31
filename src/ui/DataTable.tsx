import { type ReactNode, useCallback } from 'react';
import styles from './DataTable.module.css';
import { RowsInSteps } from './RowsInSteps.tsx';

export type Column<Row> = {
  readonly key: string;
  readonly title: string;
  readonly cell: (row: Row) => ReactNode;
  readonly isNumber?: boolean;
  /** The column that names the row. */
  readonly isRowHeader?: boolean;
  /** Left out where there is no room; what it says must be reachable elsewhere. */
  readonly hidesWhenNarrow?: boolean;
};

type DataTableProps<Row> = {
  readonly caption: string;
  readonly isCaptionHidden?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** On a narrow screen each row becomes a block with the column titles in front of the values. */
  readonly stacksWhenNarrow?: boolean;
};

export function DataTable<Row>(props: DataTableProps<Row>) {
  const { caption, isCaptionHidden, columns, rows, rowKey, stacksWhenNarrow } = props;
  const rowAt = useCallback(
    (index: number) => {
      const row = rows[index];
      return row === undefined ? null : <TableRow key={rowKey(row)} columns={columns} row={row} />;
    },
    [rows, columns, rowKey],
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls sideways must be reachable by keyboard
    <section className={styles.frame} aria-label={caption} tabIndex={0}>
      <table className={styles.table} data-stacks={stacksWhenNarrow}>
        <caption className={isCaptionHidden ? styles.hidden : styles.caption}>{caption}</caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.key} scope="col" data-number={column.isNumber} data-hides={column.hidesWhenNarrow}>
                {column.title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <RowsInSteps rowCount={rows.length} rowAt={rowAt} />
        </tbody>
      </table>
    </section>
  );
}

function TableRow<Row>({ columns, row }: { readonly columns: readonly Column<Row>[]; readonly row: Row }) {
  return (
    <tr>
      {columns.map((column) => (
        <Cell key={column.key} column={column} row={row} />
      ))}
    </tr>
  );
}

function Cell<Row>({ column, row }: { readonly column: Column<Row>; readonly row: Row }) {
  const content = column.cell(row);
  if (column.isRowHeader)
    return (
      <th scope="row" data-title={column.title}>
        {content}
      </th>
    );
  return (
    <td data-number={column.isNumber} data-hides={column.hidesWhenNarrow} data-title={column.title}>
      {content}
    </td>
  );
}
