import { formatDate } from '../../piano/format.ts';
import type { StringDecision } from '../../piano/stringingRecords.ts';
import { texts } from '../../ui/texts.ts';
import { todayIso } from '../../ui/today.ts';
import type { WorkOutcome } from './stringHistory.ts';
import { hrefOf, nameOf } from './stringKey.ts';
import styles from './WorkList.module.css';

const words = texts.strings.work;

type Props = {
  readonly decision: StringDecision;
  readonly asksForWork: boolean;
  /** What the next survey says of it, where it is done. */
  readonly outcome: WorkOutcome | undefined;
  readonly onDone: (doneOn: string | null) => void;
};

/** One line of the list: a box, the string, why, and when it was done. */
export function WorkRow({ decision, asksForWork, outcome, onDone }: Props) {
  const { instrumentId, choice, reason, decidedOn, doneOn } = decision;
  const name = nameOf(decision);
  return (
    <li className={styles.row} data-done={doneOn !== null}>
      {asksForWork ? (
        <input
          type="checkbox"
          aria-label={words.doneBox(name, texts.strings.choices[choice])}
          checked={doneOn !== null}
          onChange={(event) => onDone(event.target.checked ? todayIso() : null)}
        />
      ) : (
        <span />
      )}
      <a className={styles.name} href={hrefOf(instrumentId, decision)}>
        {name}
      </a>
      <span className={styles.reason}>
        {reason === '' ? <span className={styles.onScreen}>{words.noReason}</span> : reason}{' '}
        <small>
          ({words.decided} {formatDate(decidedOn)})
        </small>
        {outcome && (
          <>
            {' '}
            <strong>{texts.strings.after.title(texts.strings.choices[choice], formatDate(doneOn ?? ''))}</strong>{' '}
            {texts.strings.after.outcomes[outcome.outcome]}
          </>
        )}
      </span>
      {asksForWork && (
        <label className={styles.date}>
          <span>{words.doneCaption}</span>
          <span className={styles.onPaper}>{doneOn && formatDate(doneOn)}</span>
          <input
            type="date"
            aria-label={words.doneOn(name)}
            value={doneOn ?? ''}
            onChange={(event) => onDone(event.target.value === '' ? null : event.target.value)}
          />
        </label>
      )}
    </li>
  );
}
