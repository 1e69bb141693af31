import { memo } from 'react';
import { NoteCells } from '../../ui/NoteCells.tsx';
import { NoteStrip } from '../../ui/NoteStrip.tsx';
import { countState, type NoteCell } from '../../ui/noteState.ts';
import { StripLegend } from '../../ui/StripLegend.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './recording.module.css';

const words = texts.recording;

type Props = {
  readonly cells: readonly NoteCell[];
  readonly nextMidi: number | null;
  readonly breaksAfterMidi: readonly number[];
  readonly onPick: (midi: number) => void;
};

/** The whole compass, in one line and note by note. Drawn anew when a note changed, not with each level of the microphone. */
export const DeskNotes = memo(function DeskNotes({ cells, nextMidi, breaksAfterMidi, onPick }: Props) {
  return (
    <>
      <NoteStrip
        cells={cells}
        nextMidi={nextMidi}
        breaksAfterMidi={breaksAfterMidi}
        summary={texts.common.noteStrip(countState(cells, 'kept'), countState(cells, 'doubtful'), cells.length)}
      />
      <section className={styles.all} aria-label={words.allNotes}>
        <StripLegend cells={cells} />
        <p className={styles.label}>{words.allNotesHint}</p>
        <NoteCells
          label={words.allNotes}
          cells={cells}
          stateWords={texts.common.noteStates}
          nextMidi={nextMidi}
          nextWord={words.nextWord}
          onPick={onPick}
        />
      </section>
    </>
  );
});
