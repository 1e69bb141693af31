import { expect, it } from 'vitest';
import { changeTable } from '../../../src/stability/drift/changeTable.ts';
import { ownHistories } from '../../../src/stability/drift/ownChanges.ts';
import { fitWeather } from '../../../src/stability/drift/weatherModel.ts';
import { simulateHistory } from '../../../src/stability/simulateHistory.ts';
import { regularVisits, usualPlan } from '../../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../../support/seededRandom.ts';

it('nothing of a new string’s first year is held against its pin', () => {
  const replaced = { happenedOn: '2016-02-01', kind: 'string-replaced', fromMidi: 60, toMidi: 60 } as const;
  const plan = usualPlan({ visits: regularVisits('2015-03-01', 7, 6), otherEvents: [replaced], missingNoteShare: 0 });
  const { readings, events } = simulateHistory(plan, seededRandom(1));
  const table = changeTable(readings, events);
  const weather = fitWeather(table.strings, table.intervals, table.changes, 43);
  const histories = ownHistories(table, weather);
  const intervalsOf = (midi: number) =>
    histories[table.strings.findIndex((string) => string.midi === midi)]?.changes.map(
      ({ intervalIndex }) => intervalIndex,
    );
  // Visits from March 2015 every half year: the third is the first after the string, the fifth a year and a month after it.
  expect(intervalsOf(60)).toEqual([4, 5]);
  expect(intervalsOf(61)).toEqual([0, 1, 2, 3, 4, 5]);
});
