import { useId, useLayoutEffect, useRef } from 'react';
import styles from './Sheet.module.css';
import type { SheetColumn } from './sheetModel.ts';
import type { Editing } from './sheetState.ts';
import type { SheetView } from './useSheet.ts';

type CellFieldProps = {
  readonly name: string;
  readonly column: SheetColumn;
  readonly editing: Editing;
  readonly isRefused: boolean;
  readonly view: SheetView;
};

/** The open cell. */
export function CellField({ name, column, editing, isRefused, view }: CellFieldProps) {
  const field = useRef<HTMLInputElement>(null);
  const listId = useId();
  const { replaces } = editing;
  useLayoutEffect(() => {
    field.current?.focus();
    if (!replaces) field.current?.select();
  }, [replaces]);
  return (
    <>
      <input
        ref={field}
        className={styles.field}
        aria-label={name}
        aria-invalid={isRefused}
        value={editing.text}
        inputMode={column.inputMode}
        enterKeyHint="next"
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        list={column.offers ? listId : undefined}
        onChange={(event) => view.type(event.target.value)}
        onBlur={view.leave}
      />
      {column.offers && (
        <datalist id={listId}>
          {column.offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
    </>
  );
}
