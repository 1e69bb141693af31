import { formatNote } from '../../piano/format.ts';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { PartialTable } from '../../ui/PartialTable.tsx';
import { TakeFigures } from '../../ui/TakeFigures.tsx';
import { texts } from '../../ui/texts.ts';
import type { Recording } from './useRecording.ts';

const words = texts.recording;

type Props = { readonly midi: number; readonly recording: Recording; readonly onClose: () => void };

/** The figures of a note's latest take, without leaving the survey. */
export function NoteDialog({ midi, recording, onClose }: Props) {
  const take = recording.book.takes.findLast((candidate) => candidate.reading.midi === midi && !candidate.isSetAside);
  if (!take) return null;
  const { reading } = take;
  const playAgain = () => {
    recording.playNext(midi);
    onClose();
  };
  const setAside = () => {
    recording.setAside(take.id);
    onClose();
  };
  return (
    <Dialog
      title={`${words.figuresOf(formatNote(midi))}, ${texts.common.stringPosition[reading.stringPosition]}`}
      onClose={onClose}
    >
      <TakeFigures reading={reading} />
      <FieldRow>
        <Button look="primary" isLarge onPress={playAgain}>
          {words.playAgain(formatNote(midi))}
        </Button>
        <Button isLarge onPress={setAside}>
          {texts.take.setAside}
        </Button>
      </FieldRow>
      <PartialTable partials={reading.partials} />
    </Dialog>
  );
}
