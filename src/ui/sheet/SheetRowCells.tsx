import { memo } from 'react';
import { texts } from '../texts.ts';
import { CellField } from './CellField.tsx';
import styles from './Sheet.module.css';
import type { SheetCell, SheetColumn, SheetRow } from './sheetModel.ts';
import type { Editing } from './sheetState.ts';
import type { SheetView } from './useSheet.ts';

type RowProps = {
  readonly row: SheetRow;
  readonly rowIndex: number;
  readonly columns: readonly SheetColumn[];
  /** −1: one stands in another row. */
  readonly atColumn: number;
  /** What is chosen of this row; −1 for nothing. */
  readonly fromColumn: number;
  readonly toColumn: number;
  readonly editing: Editing | null;
  /** Only where something is being typed in this row. */
  readonly view: SheetView | null;
};

/** One row. It is drawn anew only when something in it changes: a key between two cells touches two of eighty-eight rows. */
export const SheetRowCells = memo(function SheetRowCells(props: RowProps) {
  const { row, rowIndex, columns, atColumn, fromColumn, toColumn, editing, view } = props;
  return (
    <tr aria-rowindex={rowIndex + 2}>
      <th scope="row">{row.name}</th>
      {row.cells.map((cell, index) => {
        const column = columns[index];
        if (!column) return null;
        const isHere = index === atColumn;
        const isEdited = isHere && editing !== null && view !== null;
        return (
          // biome-ignore lint/a11y/useAriaPropsSupportedByRole: a cell of a grid is a gridcell, which can be selected
          <td
            key={column.key}
            tabIndex={isHere && !isEdited ? 0 : -1}
            data-row={rowIndex}
            data-column={index}
            data-number={column.isNumber}
            data-here={isHere}
            aria-selected={index >= fromColumn && index <= toColumn}
            aria-invalid={cell.complaint?.severity === 'fault' ? true : undefined}
            className={styles.cell}
          >
            {isEdited ? (
              <CellField name={`${row.name}, ${column.title}`} column={column} editing={editing} view={view} />
            ) : (
              <Shown cell={cell} />
            )}
          </td>
        );
      })}
    </tr>
  );
});

const COMPLAINT_SIGNS = { fault: '✕', look: '?' } as const;

function Shown({ cell: { text, beside, isInterpolated, complaint } }: { readonly cell: SheetCell }) {
  return (
    <>
      {complaint && (
        <span className={styles.complaint} data-severity={complaint.severity} title={complaint.words}>
          <span aria-hidden="true">{COMPLAINT_SIGNS[complaint.severity]}</span>
          <span className={styles.said}>{complaint.words}. </span>
        </span>
      )}
      {isInterpolated ? (
        <em className={styles.interpolated} title={texts.stringing.sheet.interpolated}>
          <span aria-hidden="true">≈ </span>
          {text}
          <span className={styles.said}>, {texts.stringing.sheet.interpolated}</span>
        </em>
      ) : (
        text
      )}
      {beside && <span className={styles.beside}> {beside}</span>}
    </>
  );
}
