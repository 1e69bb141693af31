import { useRef } from 'react';
import type { Survey } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import type { ClockMessage } from '../../workers/listeningMessages.ts';
import { createSurveyClock } from './surveyClock.ts';

export type SurveyClockView = {
  /** Resolves when the microphone's newest calibration is known. */
  readonly begin: (deviceLabel: string, sampleRateHz: number) => Promise<void>;
  /** Says about once a minute that the survey is worth storing again. */
  readonly hear: (message: ClockMessage) => boolean;
  /** The survey with what is known of the clock it was recorded with. */
  readonly onto: (survey: Survey) => Survey;
};

const POINTS_PER_WRITE = 12;

/** What the records keep about the sample clock of a survey. */
export function useSurveyClock(records: Records, stored: Survey): SurveyClockView {
  const clock = useRef(createSurveyClock());
  const calibration = useRef(stored.calibration);
  const pointCount = useRef(0);
  return {
    begin: async (deviceLabel, sampleRateHz) => {
      clock.current.begin(sampleRateHz);
      // A microphone without a name cannot be told from another.
      const own = deviceLabel === '' ? [] : await records.calibrationsOf(deviceLabel);
      calibration.current = own.findLast((candidate) => candidate.sampleRateHz === sampleRateHz);
    },
    hear: (message) => {
      clock.current.hear(message);
      pointCount.current += 1;
      return pointCount.current % POINTS_PER_WRITE === 0;
    },
    onto: ({ calibration: _, ...survey }) => {
      const offset = clock.current.offset();
      const isOwn = calibration.current?.deviceLabel === survey.deviceLabel; // no longer, once recordings are read
      return {
        ...survey,
        ...(offset && { clockAgainstSystem: offset }),
        ...(isOwn && calibration.current && { calibration: calibration.current }),
      };
    },
  };
}
