import { formatNote } from '../piano/format.ts';
import styles from './NoteStrip.module.css';
import type { NoteCell } from './noteState.ts';

type NoteStripProps = {
  readonly cells: readonly NoteCell[];
  readonly nextMidi: number | null;
  /** Notes after which something breaks the row: a strut, or the end of the bass bridge. */
  readonly breaksAfterMidi: readonly number[];
  /** One sentence that says the same to a screen reader. */
  readonly summary: string;
};

/** The whole compass in one line, a bar for each note: full height kept, half height doubtful, a stub where nothing is. */
export function NoteStrip({ cells, nextMidi, breaksAfterMidi, summary }: NoteStripProps) {
  return (
    <div className={styles.strip} role="img" aria-label={summary}>
      <div className={styles.bars} style={{ gridTemplateColumns: `repeat(${cells.length}, minmax(0, 1fr))` }}>
        {cells.map((cell) => (
          <span
            key={cell.midi}
            className={styles.bar}
            data-state={cell.state}
            data-next={cell.midi === nextMidi}
            data-break={breaksAfterMidi.includes(cell.midi)}
          />
        ))}
      </div>
      <div className={styles.names}>
        {cells.map((cell, index) =>
          cell.midi % 12 === 0 ? (
            <span key={cell.midi} className={styles.name} style={{ left: `${((index + 0.5) / cells.length) * 100}%` }}>
              {formatNote(cell.midi)}
            </span>
          ) : null,
        )}
      </div>
    </div>
  );
}
