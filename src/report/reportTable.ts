/** A table of a printed page. */
import { element, type PageElement } from './pageTree.ts';

export type ReportColumn<Row> = {
  readonly title: string;
  readonly cell: (row: Row) => string;
  readonly isNumber?: boolean;
  /** Names the row. */
  readonly isRowHeader?: boolean;
};

export function reportTable<Row>(
  /** Null where the heading above says the same. */
  caption: string | null,
  columns: readonly ReportColumn<Row>[],
  rows: readonly Row[],
): PageElement {
  const look = (column: ReportColumn<Row>) => (column.isNumber ? { class: 'number' } : {});
  const headings = columns.map((column) => element('th', { scope: 'col', ...look(column) }, column.title));
  const lines = rows.map((row) =>
    element(
      'tr',
      {},
      columns.map((column) =>
        column.isRowHeader
          ? element('th', { scope: 'row', ...look(column) }, column.cell(row))
          : element('td', look(column), column.cell(row)),
      ),
    ),
  );
  return element(
    'table',
    {},
    caption !== null && element('caption', {}, caption),
    element('thead', {}, element('tr', {}, headings)),
    element('tbody', {}, lines),
  );
}

/** A wide table that scrolls by itself on a narrow screen, by keyboard too. */
export function scrollingTable<Row>(
  name: string,
  columns: readonly ReportColumn<Row>[],
  rows: readonly Row[],
  caption: string | null = name,
): PageElement {
  const frame = { class: 'scrolls', role: 'region', tabindex: 0, 'aria-label': name };
  return element('div', frame, reportTable(caption, columns, rows));
}
