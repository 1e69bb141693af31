import { formatSpeed } from '../../piano/formatStability.ts';
import { newWireOf } from '../../report/newWire.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { SelectField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { newWireSentences } from './newWireWords.ts';
import styles from './stability.module.css';
import {
  contraryReasons,
  nextSentences,
  ruledOutSentence,
  supportingReasons,
  verdictSentence,
} from './verdictWords.ts';

const words = texts.stability.verdict;

type Props = {
  readonly drift: Drift;
  readonly threshold: number;
  readonly onThreshold: (centsPerYear: number) => void;
  readonly history: InstrumentHistory;
};

/** The verdict first, then why, what limits it, and what would settle it. */
export function VerdictSection({ drift, threshold, onThreshold, history }: Props) {
  const { verdict } = drift;
  const newWire = newWireOf({ drift, history });
  const against = contraryReasons(drift);
  return (
    <Section title={words.title} note={words.note}>
      <p className={styles.verdict}>
        <VerdictMark state={verdict.state} /> <strong>{words.states[verdict.state]}.</strong> {verdictSentence(drift)}
      </p>
      {newWire && (
        <div className={styles.newWire}>
          <h3>{texts.stability.newWire.title}</h3>
          <p>{newWireSentences(newWire).join(' ')}</p>
        </div>
      )}
      <div className={styles.grounds}>
        <Grounds title={words.reasons} sentences={supportingReasons(drift)} />
        <Grounds title={words.against} sentences={against.length > 0 ? against : [words.nothingAgainst]} />
        <Grounds title={words.ruledOut} sentences={[ruledOutSentence(drift)]} />
        <Grounds title={words.nextTitle} sentences={nextSentences(drift, threshold)} />
      </div>
      <LeftOutNote leftOut={history.leftOut} />
      <SelectField
        id="slip-threshold"
        label={words.threshold}
        hint={words.thresholdHint}
        value={String(threshold)}
        choices={thresholdChoices(threshold)}
        onChange={(value) => onThreshold(Number(value))}
      />
    </Section>
  );
}

const THRESHOLDS: readonly number[] = [0.5, 1, 1.5, 2, 3];

/** An instrument from an archive may have another one than those offered. */
function thresholdChoices(present: number) {
  const values = [...new Set([...THRESHOLDS, present])].sort((a, b) => a - b);
  return values.map((value) => ({ value: String(value), label: formatSpeed(value) }));
}

function LeftOutNote({ leftOut }: Pick<InstrumentHistory, 'leftOut'>) {
  const told = (['unusable', 'string-unknown'] as const).filter((kind) => leftOut[kind] > 0);
  if (told.length === 0) return null;
  return <p>{told.map((kind) => texts.stability.leftOut[kind](leftOut[kind])).join(' ')}</p>;
}

function Grounds({ title, sentences }: { readonly title: string; readonly sentences: readonly string[] }) {
  return (
    <section className={styles.ground}>
      <h3>{title}</h3>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
