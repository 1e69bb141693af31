import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { FilePicker } from '../../ui/FilePicker.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { summaryOf } from './mergeWords.ts';
import styles from './records.module.css';
import { SeenArchive } from './SeenArchive.tsx';
import { type Import, useImport } from './useImport.ts';

const words = texts.records.import;

export function ImportSection({ records }: { readonly records: Records }) {
  const bringing = useImport(records);
  const { state, interrupted, look, stop } = bringing;
  const isRunning = state.phase === 'looking' || state.phase === 'bringing';
  return (
    <Section title={words.title} note={words.note}>
      {interrupted !== null && !isRunning && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.interrupted(interrupted)}
        </Notice>
      )}
      <FilePicker accept=".zip,application/zip" isDisabled={isRunning} onPick={([file]) => file && void look(file)}>
        {words.choose}
      </FilePicker>
      {isRunning && (
        <div className={styles.running}>
          <progress className={styles.progress} aria-label={words.label} value={state.share} max={1} />
          <p>{state.phase === 'looking' ? words.looking : words.bringing}</p>
          <Button onPress={stop}>{texts.records.writing.stop}</Button>
        </div>
      )}
      {state.phase === 'seen' && <SeenArchive bringing={bringing} seen={state.seen} />}
      <Ending bringing={bringing} />
    </Section>
  );
}

function Ending({ bringing: { state } }: { readonly bringing: Import }) {
  return (
    <>
      <p role="status">
        {state.phase === 'done' && words.done(summaryOf(state.report))}
        {state.phase === 'stopped' && (state.wasWriting ? words.stoppedWriting : words.stopped)}
      </p>
      {state.phase === 'failed' && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(state.message)}
        </Notice>
      )}
    </>
  );
}
