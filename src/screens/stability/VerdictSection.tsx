import { formatDate, formatSpreadCents } from '../../piano/format.ts';
import { formatSpeed } from '../../piano/formatStability.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { SelectField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
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
  readonly leftOut: InstrumentHistory['leftOut'];
};

/** The verdict first, then why, what limits it, and what would settle it. */
export function VerdictSection({ drift, threshold, onThreshold, leftOut }: Props) {
  const { verdict, settling } = drift;
  const against = contraryReasons(drift);
  return (
    <Section title={words.title} note={words.note}>
      <p className={styles.verdict}>
        <VerdictMark state={verdict.state} /> <strong>{words.states[verdict.state]}.</strong> {verdictSentence(drift)}
      </p>
      <div className={styles.grounds}>
        <Grounds title={words.reasons} sentences={supportingReasons(drift)} />
        <Grounds title={words.against} sentences={against.length > 0 ? against : [words.nothingAgainst]} />
        <Grounds title={words.ruledOut} sentences={[ruledOutSentence(drift)]} />
        <Grounds title={words.nextTitle} sentences={nextSentences(drift, threshold)} />
      </div>
      <LeftOutNote leftOut={leftOut} />
      {settling && isLongEnough(drift) && (
        <p>
          {texts.stability.settling(
            formatDate(settling.since),
            formatSpreadCents(Math.abs(settling.firstYearCents)),
            formatSpeed(settling.remainingCentsPerYear),
          )}
        </p>
      )}
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

/** A first year is not told from a few weeks of it. */
function isLongEnough({ intervals }: Drift): boolean {
  return intervals.reduce((sum, interval) => sum + (interval.hasBaseline ? interval.years : 0), 0) >= LEAST_YEARS;
}

const LEAST_YEARS = 0.75;

function LeftOutNote({ leftOut }: Pick<Props, 'leftOut'>) {
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
