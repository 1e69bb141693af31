import { useMemo, useState } from 'react';
import type { Records } from '../../records/records.ts';
import { expectedItem, lastHeardTake, progressOf } from '../../survey/surveyProgress.ts';
import { Button } from '../../ui/Button.tsx';
import { texts } from '../../ui/texts.ts';
import { ChangeLine } from './ChangeLine.tsx';
import { Controls } from './Controls.tsx';
import { CorrectionDialog } from './CorrectionDialog.tsx';
import { DeskNotes } from './DeskNotes.tsx';
import { DeskSettingsDialog } from './DeskSettingsDialog.tsx';
import { HeardNote } from './HeardNote.tsx';
import { heardChange } from './heardChange.ts';
import { NoteDialog } from './NoteDialog.tsx';
import { ProgressPanel } from './ProgressPanel.tsx';
import { RecordingNotices } from './RecordingNotices.tsx';
import { RoomPanel } from './RoomPanel.tsx';
import styles from './recording.module.css';
import { keyLabel, type RecordingAction } from './recordingKeys.ts';
import { lastHeard, recordingCells, storedCount } from './recordingState.ts';
import type { StoredSurvey } from './storedSurvey.ts';
import { useDeskSettings } from './useDeskSettings.ts';
import { useKeptClick } from './useKeptClick.ts';
import { useKeys } from './useKeys.ts';
import { type Recording, useRecording } from './useRecording.ts';
import { useSteady } from './useSteady.ts';

const words = texts.recording;

/** Which sheet lies over the desk. */
type Sheet =
  | { readonly kind: 'none' }
  | { readonly kind: 'note'; readonly midi: number }
  | { readonly kind: 'correct' }
  | { readonly kind: 'settings' };

type Props = { readonly records: Records; readonly stored: StoredSurvey };

export function RecordingDesk({ records, stored }: Props) {
  const recording = useRecording(records, stored);
  const [sheet, setSheet] = useState<Sheet>({ kind: 'none' });
  const [settings, changeSettings] = useDeskSettings();
  const { book, microphone, store } = recording;
  const isReading = recording.recordings.state.phase === 'reading';
  const cells = useMemo(() => recordingCells(book, store.writes), [book, store.writes]);
  const next = expectedItem(book);
  const act = useSteady((action: RecordingAction) => {
    if (action === 'settings') setSheet({ kind: 'settings' });
    else if (action !== 'another-note') recording.act(action);
    else if (lastHeardTake(book)) setSheet({ kind: 'correct' });
  });
  const heard = useMemo(() => lastHeard(book, store.writes), [book, store.writes]);
  useKeys(sheet.kind === 'none', settings.footKeys, act);
  useKeptClick(settings.hasClick && !isReading, heard?.isUsable && heard.storing === 'kept' ? heard.takeId : null);
  const pick = useSteady((midi: number) => {
    if (book.takes.some((take) => take.reading.midi === midi && !take.isSetAside)) setSheet({ kind: 'note', midi });
    else recording.playNext(midi);
  });
  return (
    <>
      <RecordingNotices recording={recording} />
      <div className={styles.desk}>
        <HeardNote heard={heard} early={microphone.early} nextMidi={next?.midi ?? null}>
          <Change stored={stored} recording={recording} />
          {microphone.source.state === 'listening' && microphone.room && <RoomPanel room={microphone.room} />}
        </HeardNote>
        <Progress recording={recording} namesString={stored.survey.strings === 'single strings'} />
      </div>
      <Controls
        canUndo={book.undoSteps.length > 0}
        canCorrect={lastHeardTake(book) !== null}
        isPaused={microphone.source.state === 'paused'}
        isListening={microphone.source.state === 'listening'}
        footKeys={settings.footKeys}
        onAction={act}
      />
      <p className={styles.deskSettings}>
        <Button look="quiet" shortcut={keyLabel('settings', settings.footKeys)} onPress={() => act('settings')}>
          {words.desk.title}
        </Button>
      </p>
      <DeskNotes
        cells={cells}
        nextMidi={next?.midi ?? null}
        breaksAfterMidi={stored.instrument.strutsAfterMidi}
        onPick={pick}
      />
      {sheet.kind === 'note' && (
        <NoteDialog midi={sheet.midi} recording={recording} onClose={() => setSheet({ kind: 'none' })} />
      )}
      {sheet.kind === 'settings' && (
        <DeskSettingsDialog settings={settings} onChange={changeSettings} onClose={() => setSheet({ kind: 'none' })} />
      )}
      {sheet.kind === 'correct' && (
        <CorrectionDialog cells={cells} recording={recording} onClose={() => setSheet({ kind: 'none' })} />
      )}
    </>
  );
}

function Change({ stored, recording: { book } }: { readonly stored: StoredSurvey; readonly recording: Recording }) {
  const { baseline, survey, instrument } = stored;
  const { bassBridgeTopMidi } = instrument;
  const change = useMemo(
    () => baseline && heardChange(book, baseline, survey.stage, bassBridgeTopMidi),
    [book, baseline, survey.stage, bassBridgeTopMidi],
  );
  return baseline && <ChangeLine change={change} />;
}

type ProgressProps = { readonly recording: Recording; readonly namesString: boolean };

function Progress({ recording: { book, microphone, recordings, store, message }, namesString }: ProgressProps) {
  const progress = useMemo(() => progressOf(book), [book]);
  const doneCount = useMemo(() => storedCount(book, store.writes), [book, store.writes]);
  const next = expectedItem(book);
  return (
    <ProgressPanel
      next={next}
      namesString={namesString}
      doneCount={doneCount}
      allCount={progress.totalCount}
      timeLeftS={recordings.state.phase === 'reading' ? null : progress.remainingS || null}
      isStruck={microphone.isStruck}
      message={message}
      level={microphone.source.state === 'listening' ? microphone.level : null}
    />
  );
}
