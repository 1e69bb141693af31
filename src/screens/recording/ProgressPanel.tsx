import type { LevelView } from '../../listening/levelView.ts';
import { levelWord } from '../../listening/levelWord.ts';
import { formatNote, formatTimeLeft } from '../../piano/format.ts';
import type { PlanItem } from '../../survey/surveyPlan.ts';
import { LevelBar } from '../../ui/LevelBar.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './recording.module.css';

const words = texts.recording;

type ProgressPanelProps = {
  readonly next: PlanItem | null;
  /** Where each string is recorded alone its name belongs to what is next. */
  readonly namesString: boolean;
  readonly doneCount: number;
  readonly allCount: number;
  readonly timeLeftS: number | null;
  readonly isStruck: boolean;
  /** What the last button did. */
  readonly message: string;
  readonly level: LevelView | null;
};

/** What is next, how far it is, and whether the microphone hears enough. */
export function ProgressPanel(props: ProgressPanelProps) {
  const { next, namesString, doneCount, allCount, timeLeftS, isStruck, message, level } = props;
  return (
    <div className={styles.progress}>
      <p className={styles.next}>
        <span className={styles.label}>{words.next}</span>
        <span className={styles.nextNote}>{next === null ? words.allDone : nextText(next, namesString)}</span>
      </p>
      <div>
        <p className={styles.count}>
          <strong>{words.progress(doneCount, allCount)}</strong>
          {timeLeftS !== null && <span className={styles.label}> {formatTimeLeft(timeLeftS)}</span>}
        </p>
        <progress className={styles.bar} max={allCount} value={doneCount} aria-label={words.progressLabel} />
      </div>
      {level && (
        <LevelBar
          label={words.level.label}
          share={level.share}
          zone={level.zone}
          word={levelWord(level.zone, isStruck)}
        />
      )}
      <p className={styles.activity}>{isStruck && words.struck}</p>
      <p role="status">{message}</p>
    </div>
  );
}

function nextText({ midi, stringPosition }: PlanItem, namesString: boolean): string {
  return namesString ? `${formatNote(midi)}, ${texts.common.stringPosition[stringPosition]}` : formatNote(midi);
}
