import { countState, type NoteCell, type NoteState } from './noteState.ts';
import { StateMark } from './StateMark.tsx';
import styles from './StripLegend.module.css';
import { texts } from './texts.ts';

const STATES: readonly NoteState[] = ['kept', 'doubtful', 'skipped', 'missing'];

/** How many notes are in which state: the shape, the number and the word. */
export function StripLegend({ cells }: { readonly cells: readonly NoteCell[] }) {
  return (
    <ul className={styles.legend}>
      {STATES.map((state) => {
        const count = countState(cells, state);
        if (count === 0 && state !== 'kept') return null;
        return (
          <li key={state}>
            <StateMark state={state} /> {count} {texts.common.noteStates[state]}
          </li>
        );
      })}
    </ul>
  );
}
