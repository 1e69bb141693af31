import { useRef, useState } from 'react';
import { heldTakes } from '../../listening/heldTakes.ts';
import { type Microphone, useListening } from '../../listening/useListening.ts';
import { type SoundStore, useSoundStore } from '../../listening/useSoundStore.ts';
import { type TakeStore, useTakeStore } from '../../listening/useTakeStore.ts';
import { formatNote } from '../../piano/format.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { Survey } from '../../piano/instrument.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { BookEvent, SurveyBook } from '../../survey/surveyBook.ts';
import { goTo } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import type { TakeMessage } from '../../workers/listeningMessages.ts';
import type { RecordingAction } from './recordingKeys.ts';
import { placedReading } from './recordingPlan.ts';
import { recordingsLabel } from './recordingsState.ts';
import { recordSteps } from './recordSteps.ts';
import { keepSound, remeasured, type TakeSound } from './remeasured.ts';
import { listeningSettings, type StoredSurvey, takeOfReading } from './storedSurvey.ts';
import { type Recordings, useRecordings } from './useRecordings.ts';
import { useSurveyBook } from './useSurveyBook.ts';
import { useSurveyClock } from './useSurveyClock.ts';

type DeskAction = Exclude<RecordingAction, 'another-note' | 'settings'>;

export type Recording = {
  readonly book: SurveyBook;
  readonly microphone: Microphone;
  readonly recordings: Recordings;
  readonly store: TakeStore;
  readonly soundStore: SoundStore;
  /** What the last button did, for eyes and ears. */
  readonly message: string;
  readonly start: () => void;
  readonly resume: () => void;
  readonly act: (action: DeskAction) => void;
  readonly playNext: (midi: number) => void;
  readonly setAside: (takeId: TakeId) => void;
  readonly rename: (takeId: TakeId, midi: number) => Promise<void>;
};

/** Leads what the microphone's workers tell into the book and the records, and what the player does into all three. */
export function useRecording(records: Records, stored: StoredSurvey): Recording {
  const { survey } = stored;
  const { book, latest, happen } = useSurveyBook(stored);
  const store = useTakeStore(records, survey.id);
  const soundStore = useSoundStore(records);
  const lastTakeMs = useRef(0);
  const [message, setMessage] = useState('');
  const device = useRef<Pick<Survey, 'deviceLabel' | 'sampleRateHz'>>(survey);
  const sounds = useRef(new Map<TakeId, TakeSound>());

  const clock = useSurveyClock(records, survey);

  const saveSurvey = (finishedAt: string | null) =>
    records.saveSurvey(clock.onto({ ...survey, ...device.current, finishedAt }));
  const onTake = (told: TakeMessage) => {
    setMessage('');
    const nowMs = Math.max(Date.now(), lastTakeMs.current + 1); // takes read from a file follow each other within a millisecond
    lastTakeMs.current = nowMs;
    const { outcome } = told;
    if (!outcome.found) return void happen({ kind: 'nothing-heard', reason: outcome.reason, atS: nowMs / 1000 });
    const id = newId<TakeId>();
    const reading = placedReading(outcome.reading, latest(), survey.strings);
    keepSound(sounds.current, id, told);
    happen({ kind: 'heard', id, reading, atS: nowMs / 1000 });
    const take = takeOfReading(stored, id, reading, nowMs);
    store.store(take, () => soundStore.keep(take, told));
  };
  const microphone = useListening({
    onTake,
    onStarted: ({ deviceLabel, sampleRateHz }) => {
      device.current = { deviceLabel, sampleRateHz };
      void clock.begin(deviceLabel, sampleRateHz).then(() => saveSurvey(null));
    },
    onClock: (point) => {
      if (clock.hear(point)) void saveSurvey(null);
    },
  });
  const onRecordedTake = (told: TakeMessage) => {
    if (device.current.sampleRateHz === null) {
      device.current = { ...device.current, sampleRateHz: told.sampleRateHz };
      void saveSurvey(null);
    }
    onTake(told);
  };
  const recordings = useRecordings(survey.id, {
    settings: () => listeningSettings(stored, latest()),
    onTake: onRecordedTake,
    onStarted: (fileNames) => {
      void microphone.stop();
      device.current = { deviceLabel: recordingsLabel(fileNames, texts.recordings.more), sampleRateHz: null };
      void saveSurvey(null);
    },
  });
  /** A step of the player: the records follow, and the measuring is told what to expect now. */
  const step = (event: BookEvent) => {
    const { before, after } = happen(event);
    store.follow(recordSteps(before, after));
    microphone.set(listeningSettings(stored, after));
  };
  const resume = () => {
    step({ kind: 'resume' });
    void microphone.resume();
  };
  const togglePause = () => {
    if (microphone.source.state === 'paused') return resume();
    if (microphone.source.state !== 'listening') return;
    microphone.pause();
    step({ kind: 'pause' });
  };
  const finish = async () => {
    if (recordings.state.phase === 'reading') return setMessage(texts.recordings.stillReading);
    await microphone.stop();
    await store.settled();
    if (heldTakes(survey.id).length > 0) return; // the screen says so and offers to store them again
    await soundStore.settled();
    const outcome = await saveSurvey(new Date().toISOString());
    if (outcome.written) goTo({ screen: 'survey', surveyId: survey.id });
  };
  const act = (action: DeskAction) => {
    setMessage(action === 'undo' ? undoMessage(latest()) : '');
    if (action === 'finish') void finish();
    else if (action === 'pause') togglePause();
    else step({ kind: action });
  };
  const rename = async (takeId: TakeId, midi: number) => {
    const take = latest().takes.find((candidate) => candidate.id === takeId);
    if (!take) return;
    const reading = await remeasured(take.reading, midi, sounds.current.get(takeId));
    step({ kind: 'renamed', takeId, reading: placedReading(reading, latest(), survey.strings) });
    setMessage(texts.recording.correct.done(formatNote(take.reading.midi), formatNote(midi)));
  };
  const playNext = (midi: number) => {
    const item = latest().plan.find((candidate) => candidate.midi === midi);
    if (item) step({ kind: 'go-to', item });
  };
  const start = () => void microphone.start(listeningSettings(stored, latest()));
  const setAside = (takeId: TakeId) => step({ kind: 'set-aside', takeId });
  return { book, microphone, recordings, store, soundStore, message, start, resume, act, playNext, setAside, rename };
}

/** What undoing is about to do. */
function undoMessage({ undoSteps }: SurveyBook): string {
  const last = undoSteps.at(-1);
  if (!last) return '';
  const isTake = last.kind === 'heard' && last.take !== null;
  return isTake ? texts.recording.undone(formatNote(last.take.reading.midi)) : texts.recording.undoneStep;
}
