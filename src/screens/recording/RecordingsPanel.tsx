import { Button } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './RecordingsPanel.module.css';
import type { RecordingsState } from './recordingsState.ts';

const words = texts.recordings;

type Props = { readonly state: RecordingsState; readonly onStop: () => void };

/** How far the recordings have been read, and which of them could not be. */
export function RecordingsPanel({ state, onStop }: Props) {
  if (state.phase === 'none') return null;
  return (
    <div className={styles.panel}>
      {state.phase === 'reading' && <Reading state={state} onStop={onStop} />}
      <p role="status">{outcomeText(state)}</p>
      {state.phase === 'failed' && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(state.detail)}
        </Notice>
      )}
      <Findings state={state} />
    </div>
  );
}

function Reading({ state: { fileCount, share }, onStop }: Props) {
  const percent = Math.floor(share * 100);
  return (
    <div className={styles.reading}>
      <p>
        <strong>{words.reading(fileCount)}</strong> <span className={styles.percent}>{words.percent(percent)}</span>
      </p>
      <progress className={styles.bar} max={100} value={percent} aria-label={words.progressLabel} />
      <Button isLarge onPress={onStop}>
        {words.stop}
      </Button>
    </div>
  );
}

function outcomeText({ phase, noteCount, fileCount, unreadable }: RecordingsState): string {
  if (phase === 'stopped') return words.stopped;
  return phase === 'done' ? words.done(noteCount, fileCount - unreadable.length) : '';
}

function Findings({ state: { unreadable, silent, warnings } }: { readonly state: RecordingsState }) {
  return (
    <>
      {unreadable.length > 0 && (
        <Notice kind="caution" word={words.unreadable(unreadable.length)}>
          <ul className={styles.files}>
            {unreadable.map(({ fileName, message }) => (
              <li key={fileName}>{words.unreadableFile(fileName, message)}</li>
            ))}
          </ul>
        </Notice>
      )}
      {silent.length > 0 && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.silent(silent.join(', '))}
        </Notice>
      )}
      {warnings.length > 0 && (
        <ul className={styles.files}>
          {warnings.map(({ fileName, message }) => (
            <li key={`${fileName} ${message}`}>{words.warning(fileName, message)}</li>
          ))}
        </ul>
      )}
    </>
  );
}
