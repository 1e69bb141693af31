import { expect, it } from 'vitest';
import { COMPASS_85 } from '../../src/piano/compass.ts';
import { notesOfScope, sectionsOf } from '../../src/piano/surveyScope.ts';

const FOUR_NOTES = { lowestMidi: 60, highestMidi: 63 };

it('a survey without a scope asks for every note', () => {
  expect(notesOfScope(FOUR_NOTES, undefined)).toEqual([60, 61, 62, 63]);
});

it('a section has both its ends, a sample and a choice their notes in rising order, each once', () => {
  expect(notesOfScope(FOUR_NOTES, { kind: 'section', fromMidi: 61, toMidi: 62 })).toEqual([61, 62]);
  expect(notesOfScope(FOUR_NOTES, { kind: 'sample', notesMidi: [63, 60, 63] })).toEqual([60, 63]);
  expect(notesOfScope(FOUR_NOTES, { kind: 'chosen', notesMidi: [62] })).toEqual([62]);
});

it('notes that the instrument does not have drop out', () => {
  expect(notesOfScope(FOUR_NOTES, { kind: 'chosen', notesMidi: [20, 61] })).toEqual([61]);
  expect(notesOfScope(FOUR_NOTES, { kind: 'section', fromMidi: 62, toMidi: 90 })).toEqual([62, 63]);
});

it('sections go from strut to strut, the bass break counting as one', () => {
  const row = { compass: COMPASS_85, bassBridgeTopMidi: 40, strutsAfterMidi: [71, 40] };
  expect(sectionsOf(row)).toEqual([
    { fromMidi: 21, toMidi: 40 },
    { fromMidi: 41, toMidi: 71 },
    { fromMidi: 72, toMidi: 105 },
  ]);
  expect(sectionsOf({ ...row, bassBridgeTopMidi: null, strutsAfterMidi: [] })).toEqual([{ fromMidi: 21, toMidi: 105 }]);
});

it('a break at or beyond the ends of the compass makes no section', () => {
  const row = { compass: COMPASS_85, bassBridgeTopMidi: 105, strutsAfterMidi: [10, 108] };
  expect(sectionsOf(row)).toHaveLength(1);
});
