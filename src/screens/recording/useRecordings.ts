import { useEffect, useRef, useState } from 'react';
import type { SurveyId } from '../../piano/ids.ts';
import { takeChosenRecordings } from '../../ui/chosenRecordings.ts';
import type { ListeningSettings, TakeMessage } from '../../workers/listeningMessages.ts';
import { openRecordings, type RecordingsDesk } from '../../workers/openRecordings.ts';
import type { RecordingsReport } from '../../workers/recordingsMessages.ts';
import { afterReport, NO_RECORDINGS, type RecordingsState, startReading } from './recordingsState.ts';

export type RecordingsEvents = {
  readonly settings: () => ListeningSettings;
  readonly onTake: (take: TakeMessage) => void;
  readonly onStarted: (fileNames: readonly string[]) => void;
};

export type Recordings = {
  readonly state: RecordingsState;
  readonly read: (files: readonly File[]) => void;
  /** What was kept until now stays. */
  readonly stop: () => void;
};

/** Recordings in the microphone's place, read for as long as the screen is open. */
export function useRecordings(surveyId: SurveyId, events: RecordingsEvents): Recordings {
  const [state, setState] = useState(NO_RECORDINGS);
  const desk = useRef<RecordingsDesk | null>(null);
  const latest = useRef(events);
  latest.current = events;
  const onReport = (report: RecordingsReport) => {
    if (report.kind === 'take') latest.current.onTake(report.take);
    setState((before) => afterReport(before, report));
  };
  const read = (files: readonly File[]) => {
    desk.current?.cancel();
    latest.current.onStarted(files.map((file) => file.name));
    setState(startReading(files.length));
    desk.current = openRecordings(files, latest.current.settings(), onReport);
  };
  const stop = () => {
    desk.current?.cancel();
    setState((before) => ({ ...before, phase: 'stopped' }));
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, with the files that were chosen before the screen opened
  useEffect(() => {
    const opening = setTimeout(() => {
      const files = takeChosenRecordings(surveyId);
      if (files) read(files);
    });
    return () => {
      clearTimeout(opening);
      desk.current?.cancel();
    };
  }, []);
  return { state, read, stop };
}
