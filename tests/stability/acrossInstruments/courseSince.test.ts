import { expect, it } from 'vitest';
import type { SurveyStage } from '../../../src/piano/instrument.ts';
import { courseSince } from '../../../src/stability/acrossInstruments/courseSince.ts';
import type { HistoryReading } from '../../../src/stability/drift/history.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const NOTES = Array.from({ length: 36 }, (_, index) => 55 + index);
const DATES = ['2015-03-01', '2015-09-01', '2016-03-01', '2016-09-01', '2017-03-01', '2017-09-01', '2018-03-01'];

/** Twice a year for three years: ten notes fall by 6 cents a year, the others stay, all scatter by 0.4 cents. */
function failingZone(): HistoryReading[] {
  const random = seededRandom(7);
  const reading = (visitedOn: string, stage: SurveyStage, midi: number, cents: number): HistoryReading => ({
    visitedOn,
    stage,
    humidityPct: 45 + (visitedOn.includes('-03-') ? -5 : 5),
    temperatureC: 20,
    midi,
    stringPosition: 2,
    cents: cents + 0.4 * random.normal(),
    standardUncertaintyCents: 0.2,
  });
  return DATES.flatMap((date, index) =>
    NOTES.flatMap((midi) => {
      const slip = index > 0 && midi >= 70 && midi < 80 ? -3 : 0;
      return [reading(date, 'as-found', midi, slip), reading(date, 'as-left', midi, 0)];
    }),
  );
}

const history = {
  readings: failingZone(),
  events: [],
  instrument: { compass: { lowestMidi: 55, highestMidi: 90 }, bassBridgeTopMidi: null, strutsAfterMidi: [] },
};
const request = { history, job: { doneOn: '2014-06-01', range: null }, untilOn: null, thresholdCentsPerYear: 1 };

it('says at each visit what would have been said that day, and is told how far it has come', () => {
  const told: number[] = [];
  const course = courseSince(request, 1, (doneCount) => told.push(doneCount));
  expect(told).toEqual([1, 2, 3, 4, 5, 6, 7]);
  expect(course.slice(0, 3).map(({ state }) => state)).toEqual(Array(3).fill('not enough evidence'));
  const alarm = course.findIndex(({ state }) => state === 'giving way');
  expect(alarm).toBeGreaterThanOrEqual(3);
  // Nothing more is asked after that but how it stands at the last visit.
  expect(course.slice(alarm).map(({ visitedOn }) => visitedOn)).toEqual([course[alarm]?.visitedOn, '2018-03-01']);
});

it('looks at nothing from before the work, or from after work that replaced it', () => {
  const dates = courseSince({ ...request, job: { doneOn: '2016-01-01', range: null }, untilOn: '2017-09-01' }, 1);
  expect(dates.map(({ visitedOn }) => visitedOn)).toEqual(['2016-03-01', '2016-09-01', '2017-03-01']);
});

it('judges work on other notes by those notes', () => {
  const elsewhere = courseSince({ ...request, job: { doneOn: '2014-06-01', range: { fromMidi: 55, toMidi: 60 } } }, 1);
  expect(elsewhere).toHaveLength(DATES.length);
  for (const { state } of elsewhere) expect(['holding', 'not enough evidence']).toContain(state);
});
