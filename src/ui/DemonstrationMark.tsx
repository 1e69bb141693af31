import styles from './DemonstrationMark.module.css';
import { texts } from './texts.ts';

/** Says wherever it stands that the record beside it was invented. */
export function DemonstrationMark() {
  return (
    <span className={styles.mark} title={texts.common.inventedHint}>
      {texts.common.invented}
    </span>
  );
}
