import styles from './LevelBar.module.css';

export type LevelZone = 'silent' | 'quiet' | 'good' | 'clipping';

type LevelBarProps = {
  readonly label: string;
  /** How much of the bar is filled, from 0 to 1. */
  readonly share: number;
  readonly zone: LevelZone;
  /** The word for the zone; it stands beside the bar, for the bar's colour alone says nothing. */
  readonly word: string;
};

/** The microphone's level as a plain bar that fills from the left, with a word. */
export function LevelBar({ label, share, zone, word }: LevelBarProps) {
  const percent = Math.round(Math.min(Math.max(share, 0), 1) * 100);
  return (
    <div className={styles.level}>
      <span className={styles.label}>{label}</span>
      <meter className={styles.spoken} aria-label={label} aria-valuetext={word} min={0} max={100} value={percent} />
      <div className={styles.track} aria-hidden="true">
        <div className={styles.fill} data-zone={zone} style={{ width: `${percent}%` }} />
      </div>
      <span className={styles.word} data-zone={zone}>
        {word}
      </span>
    </div>
  );
}
