/** A survey about to be begun, as it stands in the form. */
import type { Instrument, Survey, SurveyStage } from '../../piano/instrument.ts';
import { type SurveyScope, sectionsOf } from '../../piano/surveyScope.ts';
import { quickSample, USUAL_SAMPLE_COUNT } from '../../survey/quickSample.ts';

export type ScopeKind = 'all' | SurveyScope['kind'];

export type SurveyDraft = {
  readonly stage: SurveyStage;
  readonly strings: Survey['strings'];
  readonly scopeKind: ScopeKind;
  readonly sampleCount: number;
  readonly fromMidi: number;
  readonly toMidi: number;
  readonly chosenMidi: readonly number[];
};

export type SurveyChoice = Pick<Survey, 'stage' | 'strings' | 'scope'>;

export function newSurveyDraft(instrument: Instrument, stage: SurveyStage): SurveyDraft {
  const { lowestMidi, highestMidi } = instrument.compass;
  const first = sectionsOf(instrument)[0] ?? { fromMidi: lowestMidi, toMidi: highestMidi };
  return {
    stage,
    strings: 'centre strings',
    scopeKind: 'all',
    sampleCount: USUAL_SAMPLE_COUNT,
    ...first,
    chosenMidi: [],
  };
}

/** Chosen notes are for the bridge work, where each string sounds alone; going back to the others undoes that. */
export function withScopeKind(draft: SurveyDraft, scopeKind: ScopeKind): SurveyDraft {
  if (scopeKind === 'chosen') return { ...draft, scopeKind, strings: 'single strings' };
  const wasChosen = draft.scopeKind === 'chosen' && draft.strings === 'single strings';
  return { ...draft, scopeKind, strings: wasChosen ? 'centre strings' : draft.strings };
}

export function withNoteToggled(draft: SurveyDraft, midi: number): SurveyDraft {
  const isChosen = draft.chosenMidi.includes(midi);
  const chosenMidi = isChosen ? draft.chosenMidi.filter((note) => note !== midi) : [...draft.chosenMidi, midi];
  return { ...draft, chosenMidi: chosenMidi.sort((a, b) => a - b) };
}

/** What to record; null where no note is chosen. Ends of a section given in the wrong order are put right. */
export function choiceOf(draft: SurveyDraft, instrument: Instrument): SurveyChoice | null {
  const { stage, strings, scopeKind, fromMidi, toMidi, chosenMidi } = draft;
  switch (scopeKind) {
    case 'all':
      return { stage, strings };
    case 'sample':
      return { stage, strings, scope: { kind: 'sample', notesMidi: quickSample(instrument, draft.sampleCount) } };
    case 'section': {
      const ends = { fromMidi: Math.min(fromMidi, toMidi), toMidi: Math.max(fromMidi, toMidi) };
      return { stage, strings, scope: { kind: 'section', ...ends } };
    }
    case 'chosen':
      return chosenMidi.length === 0 ? null : { stage, strings, scope: { kind: 'chosen', notesMidi: chosenMidi } };
  }
}
