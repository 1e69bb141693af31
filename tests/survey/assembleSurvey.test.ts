import { describe, expect, it } from 'vitest';
import type { TakeOutcome } from '../../src/piano/reading.ts';
import { assembleSurvey, type HeardTake, timeInRecording } from '../../src/survey/assembleSurvey.ts';
import { type PlainReading, plainReading } from './plainReading.ts';
import { type Strike, struckReading } from './struckReading.ts';

const COMPASS = { lowestMidi: 60, highestMidi: 64 };

function note(onsetS: number, facts: PlainReading, hasHole = false): HeardTake {
  return { outcome: { found: true, reading: plainReading({ onsetS, ...facts }) }, onsetS, hasHole };
}

function nothing(onsetS: number, outcome: Extract<TakeOutcome, { found: false }>): HeardTake {
  return { outcome, onsetS, hasHole: false };
}

describe('assembleSurvey', () => {
  it('lists the readings in the order played, whatever the order they were measured in', () => {
    const survey = assembleSurvey([note(6, { midi: 62 }), note(1, { midi: 60 }), note(3, { midi: 61 })], COMPASS);
    expect(survey.readings.map(({ midi }) => midi)).toEqual([60, 61, 62]);
    expect(survey.skippedMidi).toEqual([63, 64]);
    expect(survey.warnings).toEqual([]);
  });

  it('names the kept and the dropped takes of a repeated note by their place among the readings', () => {
    const survey = assembleSurvey(
      [
        note(1, { midi: 60 }),
        note(3, { midi: 61, uncertaintyHz: 0.02 }),
        note(5, { midi: 61, uncertaintyHz: 0.01 }),
        note(7, { midi: 62 }),
        note(9, { midi: 61, isUsable: false }),
      ],
      COMPASS,
    );
    expect(survey.repeated).toMatchObject([
      { midi: 61, keptIndex: 2, droppedIndexes: [1, 4], repeatabilityCents: null },
    ]);
  });

  it('counts indexes among readings only, past sounds in which nothing was found', () => {
    const knock = nothing(2, { found: false, reason: 'knock', detail: '' });
    const survey = assembleSurvey([note(1, { midi: 60 }), knock, note(3, { midi: 60 })], COMPASS);
    expect(survey.repeated).toMatchObject([{ midi: 60, keptIndex: 1, droppedIndexes: [0], repeatabilityCents: null }]);
  });

  it('does not take two strings of one note for a repetition', () => {
    const survey = assembleSurvey(
      [note(1, { midi: 60, stringPosition: 1 }), note(3, { midi: 60, stringPosition: 2 })],
      COMPASS,
    );
    expect(survey.repeated).toEqual([]);
  });

  it('warns with the time where a sound held no note', () => {
    const survey = assembleSurvey(
      [nothing(75.26, { found: false, reason: 'speech', detail: 'the pitch glides' })],
      COMPASS,
    );
    expect(survey.readings).toEqual([]);
    expect(survey.warnings).toEqual(['At 1:15.3: speech, no reading (the pitch glides).']);
  });

  it('warns of a note heard only in unusable takes, and does not call it skipped', () => {
    const survey = assembleSurvey(
      [note(1, { midi: 61, isUsable: false, faults: ['too-noisy'] }), note(4, { midi: 62 })],
      COMPASS,
    );
    expect(survey.skippedMidi).toEqual([60, 63, 64]);
    expect(survey.warnings).toEqual(['C#4 was heard only in takes that cannot be used (too-noisy): play it again.']);
  });

  it('makes a take with missing frames unusable and says why', () => {
    const [reading] = assembleSurvey([note(1, { midi: 60 }, true)], COMPASS).readings;
    expect(reading?.quality.isUsable).toBe(false);
    expect(reading?.quality.faults).toEqual(['hole-in-recording']);
  });

  it('warns of a note outside the compass and keeps its reading', () => {
    const survey = assembleSurvey([note(2, { midi: 70 })], COMPASS);
    expect(survey.readings).toHaveLength(1);
    expect(survey.warnings).toEqual(['At 0:02.0: A#4 lies outside the compass C4-E4.']);
  });

  it('says so when no note was heard at all', () => {
    expect(assembleSurvey([], COMPASS)).toMatchObject({
      readings: [],
      skippedMidi: [60, 61, 62, 63, 64],
      repeated: [],
      pooledRepeatability: [],
      warnings: ['No note was heard in this recording.'],
    });
  });
});

describe('takes of a string that was struck several times', () => {
  const struck = (strike: Strike & { onsetS: number }): HeardTake => ({
    outcome: { found: true, reading: struckReading(strike) },
    onsetS: strike.onsetS,
    hasHole: false,
  });
  const takes = [
    struck({ onsetS: 1, cents: 0.4, ownCents: 0.01 }),
    struck({ onsetS: 3, cents: 0, ownCents: 0.02 }),
    struck({ onsetS: 5, midi: 61, cents: 0 }),
  ];

  it('give the kept one the larger uncertainty, and leave the others and their choice as measured', () => {
    const { readings, repeated } = assembleSurvey(takes, COMPASS);
    const scatterCents = 0.4 / Math.SQRT2;
    expect(repeated).toEqual([
      { midi: 60, keptIndex: 0, droppedIndexes: [1], repeatabilityCents: expect.closeTo(scatterCents, 12) },
    ]);
    expect(readings.map((reading) => reading.offsetStandardUncertaintyCents)).toEqual([
      expect.closeTo(scatterCents, 12),
      0.02,
      0.01,
    ]);
  });

  it('state what strikes differ by over several notes', () => {
    const notes = [60, 61, 62, 63].flatMap((midi, index) => [
      struck({ onsetS: 4 * index, midi, cents: 0 }),
      struck({ onsetS: 4 * index + 2, midi, cents: 0.2 }),
    ]);
    expect(assembleSurvey(notes, COMPASS).pooledRepeatability).toEqual([
      { register: 'all', scatterCents: expect.closeTo(0.1414, 4), repeatCount: 4, noteCount: 4 },
      { register: 'middle', scatterCents: expect.closeTo(0.1414, 4), repeatCount: 4, noteCount: 4 },
    ]);
  });

  it('are called in doubt where they differ by more than strikes do', () => {
    const moved = [struck({ onsetS: 1, cents: 0 }), struck({ onsetS: 3, cents: 8 })];
    const { warnings, readings } = assembleSurvey(moved, COMPASS);
    expect(warnings).toEqual([expect.stringMatching(/^The 2 takes of C4 scatter by 5\.7 cents/)]);
    expect(readings.map(({ offsetStandardUncertaintyCents }) => offsetStandardUncertaintyCents)).toContainEqual(
      expect.closeTo(5.66, 2),
    );
  });
});

it.each([
  [0, '0:00.0'],
  [59.96, '1:00.0'],
  [754.32, '12:34.3'],
])('timeInRecording writes %d s as %s', (seconds, text) => {
  expect(timeInRecording(seconds)).toBe(text);
});
