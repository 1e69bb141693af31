import { useRef, useState } from 'react';
import { formatNote } from '../../piano/format.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { Instrument, Survey, Take, Visit } from '../../piano/instrument.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import { type BookEvent, nextSurveyBook, type SurveyBook } from '../../survey/surveyBook.ts';
import { expectedItem } from '../../survey/surveyProgress.ts';
import { goTo } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import type { ListeningSettings, TakeMessage } from '../../workers/listeningMessages.ts';
import { heldTakes } from './heldTakes.ts';
import type { RecordingAction } from './recordingKeys.ts';
import { listenedPosition, placedReading, recordingPlan } from './recordingPlan.ts';
import { recordSteps } from './recordSteps.ts';
import { remeasured, type TakeSound } from './remeasured.ts';
import { restoreBook } from './restoreBook.ts';
import { type Microphone, useListening } from './useListening.ts';
import { type TakeStore, useTakeStore } from './useTakeStore.ts';

/** What was in the records when the screen opened. */
export type StoredSurvey = {
  readonly instrument: Instrument;
  readonly visit: Visit;
  readonly survey: Survey;
  readonly takes: readonly Take[];
};

export type Recording = {
  readonly book: SurveyBook;
  readonly microphone: Microphone;
  readonly store: TakeStore;
  /** What the last button did, for eyes and ears. */
  readonly message: string;
  readonly start: () => void;
  readonly resume: () => void;
  readonly act: (action: Exclude<RecordingAction, 'another-note'>) => void;
  readonly playNext: (midi: number) => void;
  readonly setAside: (takeId: TakeId) => void;
  readonly rename: (takeId: TakeId, midi: number) => Promise<void>;
};

/** So many takes keep their sound in memory, to be measured again as another note. */
const SOUNDS_KEPT = 8;

export function useRecording(records: Records, stored: StoredSurvey): Recording {
  const { instrument, visit, survey } = stored;
  const [book, setBook] = useState(() =>
    restoreBook(recordingPlan(survey.strings, instrument), [...stored.takes, ...heldTakes(survey.id)]),
  );
  const [message, setMessage] = useState('');
  const latest = useRef(book);
  const device = useRef<Pick<Survey, 'deviceLabel' | 'sampleRateHz'>>(survey);
  const sounds = useRef(new Map<TakeId, TakeSound>());
  const store = useTakeStore(records, survey.id);

  const saveSurvey = (change: Partial<Survey>) => records.saveSurvey({ ...survey, ...device.current, ...change });
  const settings = (): ListeningSettings => {
    const { pitchStandardHz } = visit;
    const expectedMidi = expectedItem(latest.current)?.midi;
    const stringPosition = listenedPosition(survey.strings);
    return { pitchStandardHz, stringPosition, ...(expectedMidi !== undefined && { expectedMidi }) };
  };
  const happen = (event: BookEvent) => {
    const before = latest.current;
    latest.current = nextSurveyBook(before, event);
    setBook(latest.current);
    if (event.kind === 'heard' || event.kind === 'nothing-heard') return;
    store.follow(recordSteps(before, latest.current));
    microphone.set(settings());
  };
  const onTake = (message: TakeMessage) => {
    setMessage('');
    const atS = Date.now() / 1000;
    if (!message.outcome.found) return happen({ kind: 'nothing-heard', reason: message.outcome.reason, atS });
    const id = newId<TakeId>();
    const reading = placedReading(message.outcome.reading, latest.current, survey.strings);
    keepSound(sounds.current, id, message);
    happen({ kind: 'heard', id, reading, atS });
    const { midi, stringPosition } = reading;
    const owner = { surveyId: survey.id, visitId: visit.id, instrumentId: instrument.id };
    const recordedAt = new Date(1000 * atS).toISOString();
    store.store({ id, ...owner, midi, stringPosition, recordedAt, isKept: reading.quality.isUsable, reading });
  };
  const onStarted = ({
    deviceLabel,
    sampleRateHz,
  }: Pick<Survey, 'deviceLabel'> & { readonly sampleRateHz: number }) => {
    device.current = { deviceLabel, sampleRateHz };
    void saveSurvey({ finishedAt: null });
  };
  const microphone = useListening({ onTake, onStarted });

  const undo = () => {
    const step = latest.current.undoSteps.at(-1);
    happen({ kind: 'undo' });
    setMessage(
      step?.kind === 'heard' && step.take
        ? texts.recording.undone(formatNote(step.take.reading.midi))
        : texts.recording.undoneStep,
    );
  };
  const finish = async () => {
    await microphone.stop();
    await store.settled();
    const outcome = await saveSurvey({ finishedAt: new Date().toISOString() });
    if (outcome.written) goTo({ screen: 'survey', surveyId: survey.id });
  };
  const resume = () => {
    happen({ kind: 'resume' });
    void microphone.resume();
  };
  const act = (action: Exclude<RecordingAction, 'another-note'>) => {
    setMessage('');
    if (action === 'undo') return undo();
    if (action === 'finish') return void finish();
    if (action !== 'pause') return happen({ kind: action });
    if (microphone.source.state === 'paused') return resume();
    if (microphone.source.state !== 'listening') return;
    microphone.pause();
    happen({ kind: 'pause' });
  };
  const rename = async (takeId: TakeId, midi: number) => {
    const take = latest.current.takes.find((candidate) => candidate.id === takeId);
    if (!take) return;
    const reading = await remeasured(take.reading, midi, sounds.current.get(takeId));
    happen({ kind: 'renamed', takeId, reading: placedReading(reading, latest.current, survey.strings) });
    setMessage(texts.recording.correct.done(formatNote(take.reading.midi), formatNote(midi)));
  };
  return {
    book,
    microphone,
    store,
    message,
    start: () => void microphone.start(settings()),
    resume,
    act,
    playNext: (midi) => {
      const item = latest.current.plan.find((candidate) => candidate.midi === midi);
      if (item) happen({ kind: 'go-to', item });
    },
    setAside: (takeId) => happen({ kind: 'set-aside', takeId }),
    rename,
  };
}

function keepSound(sounds: Map<TakeId, TakeSound>, id: TakeId, { samples, sampleRateHz, startS, onsetS }: TakeMessage) {
  sounds.set(id, { samples, sampleRateHz, startS, onsetIndex: Math.round((onsetS - startS) * sampleRateHz) });
  for (const old of [...sounds.keys()].slice(0, -SOUNDS_KEPT)) sounds.delete(old);
}
