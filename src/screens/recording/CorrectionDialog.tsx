import { formatNote } from '../../piano/format.ts';
import { lastHeardTake } from '../../survey/surveyProgress.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { NoteCells } from '../../ui/NoteCells.tsx';
import type { NoteCell } from '../../ui/noteState.ts';
import { texts } from '../../ui/texts.ts';
import type { Recording } from './useRecording.ts';

const words = texts.recording;

type Props = { readonly cells: readonly NoteCell[]; readonly recording: Recording; readonly onClose: () => void };

/** The last take was taken for the wrong note: which one was it? */
export function CorrectionDialog({ cells, recording, onClose }: Props) {
  const take = lastHeardTake(recording.book);
  if (!take) return null;
  const pick = (midi: number) => {
    if (midi !== take.reading.midi) void recording.rename(take.id, midi);
    onClose();
  };
  return (
    <Dialog title={words.correct.title} onClose={onClose}>
      <p>
        {words.correct.current(formatNote(take.reading.midi))} {words.correct.pick}
      </p>
      <NoteCells
        label={words.correct.title}
        cells={cells}
        stateWords={texts.common.noteStates}
        nextMidi={take.reading.midi}
        nextWord={words.correct.takenFor}
        onPick={pick}
      />
    </Dialog>
  );
}
