import { formatNote } from '../piano/format.ts';
import { midiToName } from '../piano/note.ts';
import styles from './NoteCells.module.css';
import type { NoteCell, NoteState } from './noteState.ts';
import { StateMark } from './StateMark.tsx';

type NoteCellsProps = {
  readonly label: string;
  readonly cells: readonly NoteCell[];
  readonly stateWords: Record<NoteState, string>;
  readonly nextMidi: number | null;
  readonly nextWord: string;
  readonly onPick: (midi: number) => void;
};

/** Every note of the compass to touch, an octave in a row: its name, its state as a shape and as a word. */
export function NoteCells({ label, cells, stateWords, nextMidi, nextWord, onPick }: NoteCellsProps) {
  return (
    <div className={styles.frame}>
      <ul className={styles.cells} aria-label={label}>
        {cells.map((cell) => {
          const isNext = cell.midi === nextMidi;
          const word = isNext ? nextWord : stateWords[cell.state];
          return (
            <li key={cell.midi} className={styles.place} data-pitch-class={cell.midi % 12}>
              <button
                type="button"
                className={styles.cell}
                data-state={cell.state}
                data-next={isNext}
                data-sharp={midiToName(cell.midi).includes('#')}
                aria-label={`${formatNote(cell.midi)}, ${stateWords[cell.state]}${isNext ? `, ${nextWord}` : ''}`}
                onClick={() => onPick(cell.midi)}
              >
                <span className={styles.name}>
                  {formatNote(cell.midi)} <StateMark state={cell.state} />
                </span>
                <span className={styles.state}>{word}</span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
