import { formatSize } from '../../piano/formatSize.ts';
import { Button } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './records.module.css';
import type { ArchiveWriting } from './useArchiveWriting.ts';

const words = texts.records.writing;

/** How far the writing of a file is, and how it ended. */
export function WritingStatus({ writing }: { readonly writing: ArchiveWriting }) {
  const { state, stop } = writing;
  return (
    <>
      {state.phase === 'writing' && (
        <div className={styles.running}>
          <progress className={styles.progress} aria-label={words.label} />
          <p>{words.progress(state.table, state.rowCount, formatSize(state.byteCount))}</p>
          <Button onPress={stop}>{words.stop}</Button>
        </div>
      )}
      <p role="status">
        {state.phase === 'done' &&
          words.done(state.name, formatSize(state.written.byteCount), state.written.rowCounts.readings ?? 0)}
        {state.phase === 'stopped' && words.stopped}
      </p>
      {state.phase === 'failed' && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(state.message)}
        </Notice>
      )}
    </>
  );
}
