import { type KeyboardEvent, useEffect, useRef } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import { texts } from '../../ui/texts.ts';
import { BeatSign } from './BeatSign.tsx';
import styles from './DecisionDesk.module.css';
import { type DeskAction, deskActionOf } from './deskKeys.ts';
import { beatText, type DeskRow, reasonText } from './deskRows.ts';
import { currentIndex, type DeskState } from './deskState.ts';
import { hrefOf } from './stringKey.ts';

const words = texts.strings.desk;

type TableProps = {
  readonly instrumentId: InstrumentId;
  readonly rows: readonly DeskRow[];
  readonly state: DeskState;
  readonly onState: (state: DeskState) => void;
  readonly onAction: (action: DeskAction) => void;
};

/** Rows to move over and decide by keys. */
export function DeskTable({ instrumentId, rows, state, onState, onAction }: TableProps) {
  const body = useRef<HTMLTableSectionElement>(null);
  const keys = rows.map(({ key }) => key);
  const current = keys[currentIndex(keys, state)];
  const isHeld = useRef(false);
  // The focus follows the row in hand, also where the row that had it is not shown any more; it is never taken from elsewhere.
  useEffect(() => {
    const table = body.current;
    if (!isHeld.current || !table) return;
    isHeld.current = document.activeElement === document.body || table.contains(document.activeElement);
    if (isHeld.current) table.querySelector<HTMLElement>('tr[tabindex="0"]')?.focus();
  });
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target instanceof HTMLAnchorElement && (event.key === 'Enter' || event.key === ' ')) return;
    const action = deskActionOf(event);
    if (!action) return;
    event.preventDefault();
    isHeld.current = true;
    onAction(action);
  };
  return (
    <div className={styles.frame}>
      {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: rows are moved over and decided by keys, which is a grid */}
      <table className={styles.table} role="grid" aria-multiselectable aria-label={words.caption} onKeyDown={onKeyDown}>
        <thead>
          <tr>
            {[words.string, words.beat, words.suggestion, words.decision].map((title) => (
              <th key={title} scope="col">
                {title}
              </th>
            ))}
          </tr>
        </thead>
        <tbody ref={body}>
          {rows.map((row) => (
            <tr
              key={row.key}
              tabIndex={row.key === current ? 0 : -1}
              aria-selected={state.marked.has(row.key)}
              data-marked={state.marked.has(row.key)}
              onFocus={() => row.key !== current && onState({ ...state, current: row.key })}
              onClick={(event) => event.currentTarget.focus()}
            >
              <RowCells instrumentId={instrumentId} row={row} isMarked={state.marked.has(row.key)} />
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

type RowProps = { readonly instrumentId: InstrumentId; readonly row: DeskRow; readonly isMarked: boolean };

function RowCells({ instrumentId, row, isMarked }: RowProps) {
  const { place, name, audibility, falseBeat, suggestion, decision } = row;
  return (
    <>
      <th scope="row">
        {isMarked && <span aria-hidden="true">☑ </span>}
        <a href={hrefOf(instrumentId, place)}>{name}</a>
      </th>
      <td data-title={words.beat}>
        <BeatSign audibility={audibility} /> {beatText(audibility, falseBeat)}
      </td>
      <td data-title={words.suggestion}>
        {words.because(texts.strings.choices[suggestion.choice], reasonText(suggestion))}
      </td>
      <td data-title={words.decision} data-decided={decision !== null}>
        {decision ? words.on(texts.strings.choices[decision.choice], formatDate(decision.decidedOn)) : words.undecided}
        {decision?.doneOn && `; ${words.done(formatDate(decision.doneOn))}`}
      </td>
    </>
  );
}
