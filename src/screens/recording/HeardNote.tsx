import type { ReactNode } from 'react';
import { formatCentsUncertainty, formatCentsValue, formatNote } from '../../piano/format.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './HeardNote.module.css';
import { type Heard, heardQuality, heardSentence } from './heard.ts';

const words = texts.recording;

type Props = {
  readonly heard: Heard | null;
  readonly nextMidi: number | null;
  /** What is said under the figures. */
  readonly children?: ReactNode;
};

/** The note just heard, large enough to be read from the keyboard's other end. */
export function HeardNote({ heard, nextMidi, children }: Props) {
  return (
    <section className={styles.heard} aria-label={words.heard}>
      {heard === null ? <Waiting nextMidi={nextMidi} /> : <Take heard={heard} />}
      {children}
      <p className={styles.spoken} role="status">
        {heard && heardSentence(heard)}
      </p>
    </section>
  );
}

function Waiting({ nextMidi }: { readonly nextMidi: number | null }) {
  return (
    <>
      <p className={styles.note} data-waiting="true">
        {nextMidi === null ? '–' : formatNote(nextMidi)}
      </p>
      <p className={styles.figures}>{nextMidi === null ? words.allDone : words.nothingYet}</p>
    </>
  );
}

function Take({ heard }: { readonly heard: Heard }) {
  const quality = heardQuality(heard);
  return (
    <>
      <p className={styles.note}>{heard.midi === null ? '?' : formatNote(heard.midi)}</p>
      {heard.offsetCents !== null && (
        <p className={styles.figures}>
          <span className={styles.cents}>{formatCentsValue(heard.offsetCents, heard.standardUncertaintyCents)}</span>{' '}
          <span className={styles.uncertainty}>
            {formatCentsUncertainty(heard.standardUncertaintyCents)} {words.cents}
          </span>
        </p>
      )}
      <p className={styles.quality} data-state={quality.state}>
        {quality.state !== 'pending' && <StateMark state={quality.state} />} {quality.text}
      </p>
    </>
  );
}
