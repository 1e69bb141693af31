import { useState } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { KeyHints } from '../../ui/KeyHints.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import styles from './DecisionDesk.module.css';
import { DeskTable } from './DeskTable.tsx';
import { CHOICES, type DeskAction } from './deskKeys.ts';
import { type DeskFilter, type DeskRow, filteredRows } from './deskRows.ts';
import { afterDeciding, currentIndex, type DeskState, marked, moved, targetsOf, UNTOUCHED_DESK } from './deskState.ts';
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
