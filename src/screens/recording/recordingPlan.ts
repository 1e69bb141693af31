/** Which strings a survey asks for, and which string a take belongs to. */
import type { Instrument, Survey } from '../../piano/instrument.ts';
import type { NoteReading, StringPosition } from '../../piano/reading.ts';
import { notesOfScope, type SurveyScope } from '../../piano/surveyScope.ts';
import type { SurveyBook } from '../../survey/surveyBook.ts';
import { type PlanItem, planOfCompass, planOfStrings } from '../../survey/surveyPlan.ts';
import { statusesOf } from '../../survey/surveyProgress.ts';

/** @param scope which notes are asked for; all where there is none, or where none of its notes is on the instrument */
export function recordingPlan(strings: Survey['strings'], instrument: Instrument, scope?: SurveyScope): PlanItem[] {
  const whole = wholePlan(strings, instrument);
  const asked = new Set(notesOfScope(instrument.compass, scope));
  const plan = whole.filter(({ midi }) => asked.has(midi));
  return plan.length > 0 ? plan : whole;
}

function wholePlan(strings: Survey['strings'], instrument: Instrument): PlanItem[] {
  switch (strings) {
    case 'centre strings':
      return planOfCompass(instrument.compass, 2);
    case 'open unisons':
      return planOfCompass(instrument.compass, 0);
    case 'single strings':
      return planOfStrings(instrument.compass, (midi) => usualStringCount(midi, instrument));
  }
}

/** The lowest notes of most pianos have one string, some eight to a dozen of them (common practice). */
const SINGLE_STRING_NOTES = 10;
/** Where nobody said how far the bass bridge goes: E2, a common place. */
const COMMON_BASS_TOP_MIDI = 40;

/**
 * How many strings a note usually has: one at the bottom, two up to the end of the bass bridge, three above. Instruments differ;
 * a string that is not there is skipped by the player.
 */
export function usualStringCount(midi: number, { compass, bassBridgeTopMidi }: Instrument): 1 | 2 | 3 {
  if (midi > (bassBridgeTopMidi ?? COMMON_BASS_TOP_MIDI)) return 3;
  return midi < compass.lowestMidi + SINGLE_STRING_NOTES ? 1 : 2;
}

/** What the measuring is told about the strings that sound. A single string's place in its unison is settled afterwards. */
export function listenedPosition(strings: Survey['strings']): StringPosition {
  return strings === 'open unisons' ? 0 : 2;
}

/**
 * Says which string a reading belongs to. Only where each string is recorded alone is there a choice: the expected one if the
 * note is the expected one, else the first string of that note without a good take, else its first.
 */
export function placedReading(reading: NoteReading, book: SurveyBook, strings: Survey['strings']): NoteReading {
  if (strings !== 'single strings') return reading;
  const expected = book.plan[book.expectedIndex ?? -1];
  if (expected?.midi === reading.midi) return { ...reading, stringPosition: expected.stringPosition };
  const own = statusesOf(book).filter(({ item }) => item.midi === reading.midi);
  const place = own.find(({ state }) => state !== 'kept') ?? own[0];
  return { ...reading, stringPosition: place?.item.stringPosition ?? 1 };
}
