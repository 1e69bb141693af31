import { type DragEvent, useRef, useState } from 'react';
import { Button } from './Button.tsx';
import styles from './RecordingsPicker.module.css';
import { texts } from './texts.ts';

const words = texts.recordings;
/** For the file dialog alone: what a file really is, its reader finds out. */
const ACCEPTED = 'audio/*,.wav,.flac,.ogg,.oga,.mp3';

type Props = { readonly onPick: (files: readonly File[]) => void; readonly isDisabled?: boolean };

/** A place to drop recordings on, with a button that opens the file dialog. */
export function RecordingsPicker({ onPick, isDisabled = false }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const [isOver, setOver] = useState(false);
  const pick = (list: FileList | null) => {
    const files = [...(list ?? [])];
    if (input.current) input.current.value = ''; // the same file may be chosen again
    if (files.length > 0 && !isDisabled) onPick(files);
  };
  const over = (event: DragEvent) => {
    event.preventDefault();
    setOver(true);
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    pick(event.dataTransfer.files);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is an extra for the mouse; the button does the same
    <div className={styles.place} data-over={isOver} onDragOver={over} onDragLeave={() => setOver(false)} onDrop={drop}>
      <input
        ref={input}
        className={styles.input}
        type="file"
        multiple
        accept={ACCEPTED}
        aria-label={words.title}
        tabIndex={-1}
        onChange={(event) => pick(event.target.files)}
      />
      <Button isLarge isDisabled={isDisabled} onPress={() => input.current?.click()}>
        {words.choose}
      </Button>
      <p className={styles.hint}>{isOver ? words.dropNow : words.drop}</p>
    </div>
  );
}
