/** German, loaded when it is chosen. An area that is not whole here is shown in English where it lacks words. */
import type { Texts } from '../../texts.ts';
import type { InTranslation } from '../translation.ts';
import { germanHeldTexts } from './acrossInstruments.ts';
import { germanChartTexts } from './charts.ts';
import { germanClockTexts } from './clock.ts';
import { germanCommonTexts } from './common.ts';
import { germanHearingTexts } from './hearing.ts';
import { germanInstrumentTexts } from './instrument.ts';
import { germanLongRecordTexts } from './longRecord.ts';
import { germanMethodTexts } from './method.ts';
import { germanPhotographTexts } from './photographs.ts';
import { germanRecordingTexts } from './recording.ts';
import { germanRecordingsTexts } from './recordings.ts';
import { germanRecordsTexts } from './records.ts';
import { germanReportTexts } from './report.ts';
import { germanRoomTexts } from './room.ts';
import { germanSoundTexts } from './sound.ts';
import { germanStabilityTexts } from './stability.ts';
import { germanStringingTexts } from './stringing.ts';
import { germanStringTexts } from './strings.ts';
import { germanTakeTexts } from './take.ts';
import { germanTorqueTexts } from './torque.ts';
import { germanVisitTexts } from './visit.ts';
import { germanWorkshopTexts } from './workshop.ts';

export const germanTexts = {
  common: germanCommonTexts,
  workshop: germanWorkshopTexts,
  instrument: germanInstrumentTexts,
  visit: germanVisitTexts,
  recording: germanRecordingTexts,
  recordings: germanRecordingsTexts,
  photographs: germanPhotographTexts,
  records: germanRecordsTexts,
  longRecord: germanLongRecordTexts,
  hearing: germanHearingTexts,
  report: germanReportTexts,
  room: germanRoomTexts,
  clock: germanClockTexts,
  sound: germanSoundTexts,
  take: germanTakeTexts,
  charts: germanChartTexts,
  torque: germanTorqueTexts,
  held: germanHeldTexts,
  stability: germanStabilityTexts,
  strings: germanStringTexts,
  stringing: germanStringingTexts,
  method: germanMethodTexts,
} satisfies InTranslation<Texts>;
