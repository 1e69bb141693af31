import { formatNote } from '../../piano/format.ts';
import type { ScheduleComplaint } from '../../stringing/schedule/checkSchedule.ts';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import { complaintLine } from './sheetWords.ts';
import styles from './stringing.module.css';

const words = texts.stringing.sheet;
const SIGNS = { fault: '✕', look: '?' } as const;

type Props = {
  readonly complaints: readonly ScheduleComplaint[];
  readonly onGoTo: (complaint: ScheduleComplaint) => void;
};

/** What does not fit together, by note and column; each line leads to its cell. */
export function ComplaintList({ complaints, onGoTo }: Props) {
  if (complaints.length === 0) return <p className={styles.quiet}>{words.complaints.none}</p>;
  return (
    <Disclosure summary={words.complaints.title(complaints.length)}>
      <ul className={styles.list}>
        {complaints.map((complaint) => (
          <li key={`${complaint.midi} ${complaint.field} ${complaint.kind}`}>
            <span role="img" aria-label={words.complaints.severity[complaint.severity]}>
              {SIGNS[complaint.severity]}
            </span>
            <button
              type="button"
              className={styles.link}
              title={words.complaints.goTo(formatNote(complaint.midi), words.columns[complaint.field])}
              onClick={() => onGoTo(complaint)}
            >
              {complaintLine(complaint)}
            </button>
          </li>
        ))}
      </ul>
    </Disclosure>
  );
}
