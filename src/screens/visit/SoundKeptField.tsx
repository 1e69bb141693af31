import { useState } from 'react';
import { formatSize } from '../../piano/formatSize.ts';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import type { Choice } from '../../ui/Field.tsx';
import { type SoundKept, soundKept } from '../../ui/soundKept.ts';
import { texts } from '../../ui/texts.ts';
import styles from './visit.module.css';

const words = texts.sound.kept;
const CHOICES: readonly Choice<SoundKept>[] = [
  { value: 'first-seconds', label: words.choices['first-seconds'] },
  { value: 'whole', label: words.choices.whole },
  { value: 'none', label: words.choices.none },
];
/** Four seconds and a little of 88 notes at 48 kHz, at the 8.5 bits a sample that the sample recordings need. */
const USUAL_SURVEY_BYTES = (88 * 4.3 * 48_000 * 8.5) / 8;

/** A choice of this device, which holds for takes from now on. */
export function SoundKeptField({ storedSize }: { readonly storedSize: number }) {
  const [kept, setKept] = useState(soundKept.read);
  const change = (next: SoundKept) => {
    soundKept.write(next);
    setKept(next);
  };
  return (
    <Disclosure summary={words.open(words.choices[kept])}>
      <div className={styles.start}>
        <ChoiceField name="sound-kept" label={words.label} value={kept} choices={CHOICES} onChange={change} />
        <p className={styles.privacy}>
          {words.note(formatSize(USUAL_SURVEY_BYTES))} {words.stored(formatSize(storedSize))}
        </p>
      </div>
    </Disclosure>
  );
}
