import { type FocusEvent, useId, useLayoutEffect, useRef } from 'react';
import { Button } from '../Button.tsx';
import { texts } from '../texts.ts';
import styles from './Sheet.module.css';
import type { SheetColumn, SheetRefusal } from './sheetModel.ts';
import type { Editing } from './sheetState.ts';
import type { SheetView } from './useSheet.ts';

type CellFieldProps = {
  readonly name: string;
  readonly column: SheetColumn;
  readonly editing: Editing;
  readonly view: SheetView;
};

/** The open cell, and under it why what was typed is not taken. */
export function CellField({ name, column, editing, view }: CellFieldProps) {
  const field = useRef<HTMLInputElement>(null);
  const listId = useId();
  const { refusal } = view;
  const { replaces } = editing;
  useLayoutEffect(() => {
    field.current?.focus();
    if (!replaces) field.current?.select();
  }, [replaces]);
  const blur = (event: FocusEvent) => {
    const isInside = event.relatedTarget instanceof Node && event.currentTarget.contains(event.relatedTarget);
    if (!isInside) view.leave();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears when the focus leaves the field and what belongs to it
    <div className={styles.open} data-open onBlur={blur}>
      <input
        ref={field}
        className={styles.field}
        aria-label={name}
        aria-invalid={refusal !== null}
        value={editing.text}
        inputMode={column.inputMode}
        enterKeyHint="next"
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        list={column.offers ? listId : undefined}
        onChange={(event) => view.type(event.target.value)}
      />
      {column.offers && (
        <datalist id={listId}>
          {column.offers.map((offer) => (
            <option key={offer} value={offer} />
          ))}
        </datalist>
      )}
      {refusal && <Refusal refusal={refusal} onTake={view.take} />}
    </div>
  );
}

type RefusalProps = { readonly refusal: SheetRefusal; readonly onTake: (text: string) => void };

function Refusal({ refusal: { message, meanings }, onTake }: RefusalProps) {
  const box = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    box.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, []);
  return (
    // A press must not take the focus from the field: the field would close, and this with it.
    <div ref={box} className={styles.refusal} role="alert" onPointerDown={(event) => event.preventDefault()}>
      <p>
        <strong>✕ {texts.common.faultWord}</strong> {message}
      </p>
      {meanings.map(({ label, text }) => (
        <Button key={label} onPress={() => onTake(text)}>
          {label}
        </Button>
      ))}
    </div>
  );
}
