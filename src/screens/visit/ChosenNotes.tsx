import { type Compass, notesOf } from '../../piano/compass.ts';
import { formatNote } from '../../piano/format.ts';
import { midiToName } from '../../piano/note.ts';
import { Button } from '../../ui/Button.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './scope.module.css';

const words = texts.visit.scope;

type Props = {
  readonly compass: Compass;
  readonly chosenMidi: readonly number[];
  readonly onToggle: (midi: number) => void;
  readonly onClear: () => void;
};

/** Every note as a button that stays down. */
export function ChosenNotes({ compass, chosenMidi, onToggle, onClear }: Props) {
  return (
    <div className={styles.fields}>
      <p>{words.chosenHint}</p>
      <fieldset className={styles.notes} aria-label={words.chooseNotes}>
        {notesOf(compass).map((midi) => (
          <button
            key={midi}
            type="button"
            className={styles.note}
            data-sharp={midiToName(midi).includes('#')}
            aria-pressed={chosenMidi.includes(midi)}
            onClick={() => onToggle(midi)}
          >
            {formatNote(midi)}
          </button>
        ))}
      </fieldset>
      <p className={styles.chosen} role="status">
        {chosenMidi.length === 0 ? words.noneChosen : words.chosenCount(chosenMidi.length)}
        {chosenMidi.length > 0 && (
          <Button look="quiet" onPress={onClear}>
            {words.clear}
          </Button>
        )}
      </p>
    </div>
  );
}
