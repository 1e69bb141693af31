import { describe, expect, it } from 'vitest';
import type { SurveyId, VisitId } from '../../src/piano/ids.ts';
import type { Visit } from '../../src/piano/instrument.ts';
import type { NoteReading } from '../../src/piano/reading.ts';
import { baselineReadings } from '../../src/stability/baselineReadings.ts';
import type { EarlierBaseline } from '../../src/stability/changeIntervals.ts';
import { stringReading } from './stringReading.ts';

const on = (visitedOn: string): Visit => ({ id: visitedOn as VisitId, visitedOn }) as Visit;
const of = (name: string) => [name as SurveyId];

const older = (name: string, startedAnew: EarlierBaseline['startedAnew'] = []): EarlierBaseline => ({
  from: on(name),
  stage: 'as-left',
  surveyIds: of(name),
  years: 1,
  humidityChangePct: null,
  temperatureChangeC: null,
  startedAnew,
});

const BY_SURVEY: Readonly<Record<string, readonly NoteReading[]>> = {
  '2020-01-01': [60, 62, 64].map((midi) => stringReading({ midi })),
  '2021-01-01': [60, 62].map((midi) => stringReading({ midi })),
  '2022-01-01': [60].map((midi) => stringReading({ midi })),
};

const readingsOf = (ids: readonly SurveyId[]) => ids.flatMap((id) => BY_SURVEY[id] ?? []);

const found = (earlier: readonly EarlierBaseline[], startedAnew: EarlierBaseline['startedAnew'] = []) =>
  baselineReadings(
    {
      from: on('2022-01-01'),
      baseline: { known: true, stage: 'as-found', surveyIds: of('2022-01-01') },
      startedAnew,
      earlier,
    },
    readingsOf,
  ).map(({ reading, visitedOn, stage }) => `${reading.midi} ${visitedOn} ${stage}`);

describe('baselineReadings', () => {
  it('takes the newest reading of each string, from low to high', () => {
    expect(found([older('2021-01-01'), older('2020-01-01')])).toEqual([
      '60 2022-01-01 as-found',
      '62 2021-01-01 as-left',
      '64 2020-01-01 as-left',
    ]);
  });

  it('takes none from before work on the string', () => {
    const worked = [{ fromMidi: 62, toMidi: 72 }];
    expect(found([older('2021-01-01', worked), older('2020-01-01', worked)])).toEqual(['60 2022-01-01 as-found']);
    expect(found([older('2021-01-01', [{ fromMidi: null, toMidi: 60 }])], [{ fromMidi: null, toMidi: 60 }])).toEqual([
      '62 2021-01-01 as-left',
    ]);
  });

  it('does not take another string of the note for it', () => {
    const left = stringReading({ midi: 60, stringPosition: 1 });
    const strings = baselineReadings(
      {
        from: on('b'),
        baseline: { known: true, stage: 'as-left', surveyIds: of('b') },
        startedAnew: [],
        earlier: [older('a')],
      },
      ([id]) => (id === 'a' ? [left] : [stringReading({ midi: 60, stringPosition: 2 })]),
    );
    expect(strings.map(({ reading, visitedOn }) => [reading.stringPosition, visitedOn])).toEqual([
      [1, 'a'],
      [2, 'b'],
    ]);
  });

  it('is empty where the piano was tuned since', () => {
    const baseline = { known: false, reason: 'tuned-after-the-last-survey' } as const;
    const lost = { from: on('2022-01-01'), baseline, startedAnew: [], earlier: [] };
    expect(baselineReadings(lost, readingsOf)).toEqual([]);
  });
});
