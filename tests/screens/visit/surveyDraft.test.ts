import { describe, expect, it } from 'vitest';
import { COMPASS_88 } from '../../../src/piano/compass.ts';
import type { InstrumentId } from '../../../src/piano/ids.ts';
import type { Instrument } from '../../../src/piano/instrument.ts';
import { choiceOf, newSurveyDraft, withNoteToggled, withScopeKind } from '../../../src/screens/visit/surveyDraft.ts';
import { quickSample } from '../../../src/survey/quickSample.ts';

const INSTRUMENT: Instrument = {
  id: 'i1' as InstrumentId,
  name: 'Hall grand',
  kind: 'grand',
  builtYear: null,
  serialNumber: '',
  compass: COMPASS_88,
  bassBridgeTopMidi: 40,
  strutsAfterMidi: [40, 71],
  pinBlock: '',
  remark: '',
  isDemonstration: false,
};
const DRAFT = newSurveyDraft(INSTRUMENT, 'as-found');

describe('a survey about to be begun', () => {
  it('asks for all notes, and then keeps no list of them', () => {
    expect(choiceOf(DRAFT, INSTRUMENT)).toEqual({ stage: 'as-found', strings: 'centre strings' });
  });

  it('keeps the notes of the sample as they were proposed', () => {
    const draft = { ...withScopeKind(DRAFT, 'sample'), sampleCount: 12 };
    expect(choiceOf(draft, INSTRUMENT)?.scope).toEqual({ kind: 'sample', notesMidi: quickSample(INSTRUMENT, 12) });
  });

  it('begins with the lowest section and puts reversed ends right', () => {
    const draft = withScopeKind(DRAFT, 'section');
    expect(choiceOf(draft, INSTRUMENT)?.scope).toEqual({ kind: 'section', fromMidi: 21, toMidi: 40 });
    const reversed = { ...draft, fromMidi: 71, toMidi: 41 };
    expect(choiceOf(reversed, INSTRUMENT)?.scope).toEqual({ kind: 'section', fromMidi: 41, toMidi: 71 });
  });

  it('takes each string of chosen notes alone, and none where no note is chosen', () => {
    const empty = withScopeKind(DRAFT, 'chosen');
    expect(choiceOf(empty, INSTRUMENT)).toBeNull();
    const two = withNoteToggled(withNoteToggled(withNoteToggled(empty, 72), 60), 65);
    const left = withNoteToggled(two, 65);
    expect(choiceOf(left, INSTRUMENT)).toEqual({
      stage: 'as-found',
      strings: 'single strings',
      scope: { kind: 'chosen', notesMidi: [60, 72] },
    });
    expect(withScopeKind(left, 'all').strings).toBe('centre strings');
  });

  it('leaves a choice of strings alone that was made by hand', () => {
    const open = { ...DRAFT, strings: 'open unisons' } as const;
    expect(withScopeKind(open, 'sample').strings).toBe('open unisons');
  });
});
