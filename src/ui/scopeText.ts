/** Which notes a survey asks for, in words. */
import { formatNoteRange, formatNotes } from '../piano/format.ts';
import type { SurveyScope } from '../piano/surveyScope.ts';
import { texts } from './texts.ts';

/** Begins with a small letter; empty where all notes are asked for, which goes without saying. */
export function scopeText(scope: SurveyScope | undefined): string {
  const words = texts.visit.scope;
  if (scope === undefined) return '';
  switch (scope.kind) {
    case 'sample':
      return words.sample(scope.notesMidi.length);
    case 'section':
      return words.section(formatNoteRange(scope.fromMidi, scope.toMidi));
    case 'chosen':
      return words.chosen(formatNotes(scope.notesMidi));
  }
}
