import type { Instrument } from '../../piano/instrument.ts';
import type { InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import styles from './instrument.module.css';
import { useIdleVerdict } from './useIdleVerdict.ts';

const words = texts.stability;

type Props = { readonly instrument: Instrument; readonly history: InstrumentHistory | null };

/** The verdict on the pin block in a line, and the way to what it rests on. */
export function StabilityLine({ instrument, history }: Props) {
  const verdict = useIdleVerdict(instrument, history);
  const isEmpty = history !== null && history.readings.length === 0;
  return (
    <Section title={words.line.title}>
      <div className={styles.stabilityLine}>
        <p role="status">
          {verdict ? (
            <>
              <VerdictMark state={verdict.state} /> {words.verdict.states[verdict.state]}
            </>
          ) : isEmpty ? (
            words.line.none
          ) : (
            words.line.waiting
          )}
        </p>
        <LinkButton href={routeToHref({ screen: 'stability', instrumentId: instrument.id })}>{words.open}</LinkButton>
      </div>
    </Section>
  );
}
