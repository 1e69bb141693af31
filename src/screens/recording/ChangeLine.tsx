import { memo } from 'react';
import { texts } from '../../ui/texts.ts';
import styles from './ChangeLine.module.css';
import { changeText, type HeardChange, strayText } from './heardChange.ts';

type Props = { readonly change: HeardChange | null };

/** Under the cents of the note just heard: how far it moved since it was last read. Its room is kept while there is nothing to say. */
export const ChangeLine = memo(function ChangeLine({ change }: Props) {
  const stray = change ? strayText(change) : '';
  return (
    <div className={styles.change} role="status" aria-label={texts.recording.change.label}>
      <p>{change && changeText(change)}</p>
      <p className={styles.stray}>{stray}</p>
    </div>
  );
});
