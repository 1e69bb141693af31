/** What was in the records when the recording screen opened. */
import type { TakeId } from '../../piano/ids.ts';
import type { Instrument, Survey, Take, Visit } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { SurveyBook } from '../../survey/surveyBook.ts';
import { expectedItem } from '../../survey/surveyProgress.ts';
import { measuredNow } from '../../ui/programVersion.ts';
import type { ListeningSettings } from '../../workers/listeningMessages.ts';
import type { ChangeBaseline } from './changeBaseline.ts';
import { listenedPosition } from './recordingPlan.ts';

export type StoredSurvey = {
  readonly instrument: Instrument;
  readonly visit: Visit;
  readonly survey: Survey;
  readonly takes: readonly Take[];
  /** Null where nothing was read before that could be compared. */
  readonly baseline: ChangeBaseline | null;
};

/** What the measuring is told: the pitch standard, the strings that sound, and the note to expect. */
export function listeningSettings({ visit, survey }: StoredSurvey, book: SurveyBook): ListeningSettings {
  const { pitchStandardHz } = visit;
  const expectedMidi = expectedItem(book)?.midi;
  const stringPosition = listenedPosition(survey.strings);
  return { pitchStandardHz, stringPosition, ...(expectedMidi !== undefined && { expectedMidi }) };
}

/** A take as the records keep it. One that cannot be used asks for no place; it is stored aside. */
export function takeOfReading(stored: StoredSurvey, id: TakeId, reading: NoteReading, recordedAtMs: number): Take {
  const { survey, visit, instrument } = stored;
  const { midi, stringPosition, quality } = reading;
  const owner = { surveyId: survey.id, visitId: visit.id, instrumentId: instrument.id };
  const recordedAt = new Date(recordedAtMs).toISOString();
  return { id, ...owner, midi, stringPosition, recordedAt, isKept: quality.isUsable, reading, measured: measuredNow() };
}
