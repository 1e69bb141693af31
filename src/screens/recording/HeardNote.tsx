import type { ReactNode } from 'react';
import { formatCentsUncertainty, formatCentsValue, formatNote } from '../../piano/format.ts';
import { StateMark } from '../../ui/StateMark.tsx';
import { texts } from '../../ui/texts.ts';
import type { EarlyMessage } from '../../workers/listeningMessages.ts';
import styles from './HeardNote.module.css';
import { type Heard, heardQuality, heardSentence } from './heard.ts';

const words = texts.recording;

type Props = {
  readonly heard: Heard | null;
  /** A note that still sounds stands in the place of the one before it. */
  readonly early: EarlyMessage | null;
  readonly nextMidi: number | null;
  /** What is said under the figures. */
  readonly children?: ReactNode;
};

/** The note just heard, large enough to be read from the keyboard's other end. */
export function HeardNote({ heard, early, nextMidi, children }: Props) {
  const sentence = heard && heardSentence(heard);
  return (
    <section className={styles.heard} aria-label={words.heard}>
      {early ? <Early early={early} /> : heard ? <Take heard={heard} /> : <Waiting nextMidi={nextMidi} />}
      <p className={styles.before}>{early && sentence && words.before(sentence)}</p>
      {children}
      <p className={styles.spoken} role="status">
        {sentence}
      </p>
    </section>
  );
}

function Early({ early: { midi, offsetCents, offsetStandardUncertaintyCents } }: { readonly early: EarlyMessage }) {
  return (
    <>
      <p className={styles.note}>{formatNote(midi)}</p>
      <Figures offsetCents={offsetCents} standardUncertaintyCents={offsetStandardUncertaintyCents} />
      <p className={styles.quality} data-state="pending">
        {words.listening}
      </p>
    </>
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
        <Figures offsetCents={heard.offsetCents} standardUncertaintyCents={heard.standardUncertaintyCents} />
      )}
      <p className={styles.quality} data-state={quality.state}>
        {quality.state !== 'pending' && <StateMark state={quality.state} />} {quality.text}
      </p>
    </>
  );
}

type FiguresProps = { readonly offsetCents: number; readonly standardUncertaintyCents: number | null };

function Figures({ offsetCents, standardUncertaintyCents }: FiguresProps) {
  return (
    <p className={styles.figures}>
      <span className={styles.cents}>{formatCentsValue(offsetCents, standardUncertaintyCents)}</span>{' '}
      <span className={styles.uncertainty}>
        {formatCentsUncertainty(standardUncertaintyCents)} {words.cents}
      </span>
    </p>
  );
}
