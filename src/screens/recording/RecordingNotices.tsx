import { ProcessingNotice, SourceNotice } from '../../listening/SourceNotice.tsx';
import { expectedItem } from '../../survey/surveyProgress.ts';
import { Button } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { RecordingsPicker } from '../../ui/RecordingsPicker.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { AwakeAdvice } from './AwakeAdvice.tsx';
import { RecordingsPanel } from './RecordingsPanel.tsx';
import styles from './recording.module.css';
import { SoundNotice } from './SoundNotice.tsx';
import type { Recording } from './useRecording.ts';

const words = texts.recording;

/** What stands above the desk: the microphone, the screen's light, the disk, and sound that was missing. */
export function RecordingNotices({
  recording: { book, microphone, recordings, store, soundStore, start, resume },
}: {
  readonly recording: Recording;
}) {
  const isIdle = recordings.state.phase !== 'reading' && microphone.source.state === 'off';
  const wantsRecordings = isIdle && expectedItem(book) !== null;
  return (
    <div className={styles.notices}>
      {recordings.state.phase !== 'reading' && (
        <SourceNotice
          source={microphone.source}
          takeCount={book.takes.length - store.unstoredCount}
          onStart={start}
          onResume={resume}
        />
      )}
      {wantsRecordings && <RecordingsPicker onPick={recordings.read} />}
      <RecordingsPanel state={recordings.state} onStop={recordings.stop} />
      <ProcessingNotice settings={microphone.notHonoured} />
      <AwakeAdvice isListening={microphone.source.state === 'listening'} awake={microphone.awake} />
      <WriteFault fault={store.fault} />
      <SoundNotice dropped={soundStore.dropped} />
      {store.unstoredCount > 0 && (
        <div className={styles.offer}>
          <Button look="primary" isLarge onPress={store.retry}>
            {words.storeAgain}
          </Button>
          <p>{words.unstored(store.unstoredCount)}</p>
        </div>
      )}
      {microphone.hasHole && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.hole}
        </Notice>
      )}
    </div>
  );
}
