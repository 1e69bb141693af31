/**
 * Every word on the screens, in one object: English, until another language is spoken. Words are looked up by screens as they are loaded,
 * so the language has to be spoken before. Another language is another object of the same shape (texts/german).
 */
import { heldTexts } from './texts/acrossInstruments.ts';
import { chartTexts } from './texts/charts.ts';
import { clockTexts } from './texts/clock.ts';
import { commonTexts } from './texts/common.ts';
import { hearingTexts } from './texts/hearing.ts';
import { instrumentTexts } from './texts/instrument.ts';
import { longRecordTexts } from './texts/longRecord.ts';
import { methodTexts } from './texts/method.ts';
import { photographTexts } from './texts/photographs.ts';
import { recordingTexts } from './texts/recording.ts';
import { recordingsTexts } from './texts/recordings.ts';
import { recordsTexts } from './texts/records.ts';
import { reportTexts } from './texts/report.ts';
import { roomTexts } from './texts/room.ts';
import { soundTexts } from './texts/sound.ts';
import { stabilityTexts } from './texts/stability.ts';
import { stringingTexts } from './texts/stringing.ts';
import { stringTexts } from './texts/strings.ts';
import { takeTexts } from './texts/take.ts';
import { torqueTexts } from './texts/torque.ts';
import { type InTranslation, inLanguage } from './texts/translation.ts';
import { visitTexts } from './texts/visit.ts';
import { workshopTexts } from './texts/workshop.ts';

export const texts = {
  common: commonTexts,
  workshop: workshopTexts,
  instrument: instrumentTexts,
  visit: visitTexts,
  recording: recordingTexts,
  recordings: recordingsTexts,
  photographs: photographTexts,
  records: recordsTexts,
  longRecord: longRecordTexts,
  method: methodTexts,
  hearing: hearingTexts,
  report: reportTexts,
  room: roomTexts,
  clock: clockTexts,
  sound: soundTexts,
  take: takeTexts,
  strings: stringTexts,
  charts: chartTexts,
  torque: torqueTexts,
  held: heldTexts,
  stability: stabilityTexts,
  stringing: stringingTexts,
};

export type Texts = typeof texts;

/** From now on the translation's words stand in the place of the English ones; what it lacks stays English. */
export function speak(translation: InTranslation<Texts>): void {
  Object.assign(texts, inLanguage(texts, translation));
}
