import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { KeyHints } from '../../ui/KeyHints.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { BeatSign } from './BeatSign.tsx';
import styles from './DecisionDesk.module.css';
import { CHOICES, type DeskAction, deskActionOf } from './deskKeys.ts';
import { beatText, type DeskFilter, type DeskRow, filteredRows, reasonText } from './deskRows.ts';
import { afterDeciding, currentIndex, type DeskState, marked, moved, targetsOf, UNTOUCHED_DESK } from './deskState.ts';
import { hrefOf } from './stringKey.ts';
import { useDecisions } from './useDecisions.ts';

const words = texts.strings.desk;
const FILTERS: readonly DeskFilter[] = ['beating', 'open', 'all'];

type Props = { readonly records: Records; readonly instrumentId: InstrumentId; readonly rows: readonly DeskRow[] };

/** The strings one under another; a number key decides for the one in hand, or for all that are marked. */
export function DecisionDesk({ records, instrumentId, rows }: Props) {
  const [filter, setFilter] = useState<DeskFilter>('beating');
  const [state, setState] = useState<DeskState>(UNTOUCHED_DESK);
  const decisions = useDecisions(records, instrumentId);
  const shown = filteredRows(rows, filter);
  const keys = shown.map(({ key }) => key);
  const act = (action: DeskAction) => {
    const targets = targetsOf(keys, state).flatMap((key) => shown.find((row) => row.key === key) ?? []);
    switch (action.kind) {
      case 'move':
        return setState(moved(keys, state, action.by, action.isMarking));
      case 'end':
        return setState(moved(keys, state, action.end === 'first' ? -keys.length : keys.length));
      case 'mark':
        return setState(marked(state, keys[currentIndex(keys, state)] ?? ''));
      case 'unmark-all':
        return setState({ ...state, marked: new Set() });
      case 'undo':
        return decisions.undo();
      case 'decide':
        decisions.decide(targets, action.choice);
        break;
      case 'take-suggestion':
        decisions.takeSuggestions(targets);
        break;
      case 'clear':
        decisions.clear(targets);
    }
    setState(afterDeciding(keys, state));
  };
  const onFilter = (next: DeskFilter) => {
    setFilter(next);
    setState(UNTOUCHED_DESK);
  };
  const decidedCount = rows.filter(({ decision }) => decision !== null).length;
  return (
    <>
      <ChoiceField
        name="desk-filter"
        label={words.show}
        value={filter}
        choices={FILTERS.map((value) => ({ value, label: words.shown[value] }))}
        onChange={onFilter}
      />
      {filter === 'beating' && <p className={styles.soft}>{words.sorted}</p>}
      <p>
        {words.progress(decidedCount, rows.length)} {state.marked.size > 0 && words.marked(state.marked.size)}
      </p>
      {shown.length === 0 ? (
        <p>{words.none[filter]}</p>
      ) : (
        <DeskTable instrumentId={instrumentId} rows={shown} state={state} onState={setState} onAction={act} />
      )}
      <FieldRow>
        {CHOICES.map((choice, index) => (
          <Button key={choice} shortcut={String(index + 1)} onPress={() => act({ kind: 'decide', choice })}>
            {texts.strings.choices[choice]}
          </Button>
        ))}
        <Button look="quiet" onPress={decisions.undo}>
          {texts.common.undo}
        </Button>
      </FieldRow>
      <p role="status">{decisions.message}</p>
      <WriteFault fault={decisions.fault} />
      <KeyHints>
        <Disclosure summary={words.legend}>
          <p>{words.keys}</p>
        </Disclosure>
      </KeyHints>
    </>
  );
}

type TableProps = {
  readonly instrumentId: InstrumentId;
  readonly rows: readonly DeskRow[];
  readonly state: DeskState;
  readonly onState: (state: DeskState) => void;
  readonly onAction: (action: DeskAction) => void;
};

function DeskTable({ instrumentId, rows, state, onState, onAction }: TableProps) {
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
