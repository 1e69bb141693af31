import 'fake-indexeddb/auto';
import { expect, it } from 'vitest';
import type { Survey } from '../../../src/piano/instrument.ts';
import { newId } from '../../../src/records/newId.ts';
import { openRecords } from '../../../src/records/records.ts';
import { readChangeBaseline } from '../../../src/screens/recording/changeBaseline.ts';
import {
  exampleInstrument,
  exampleReading,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from '../../records/exampleRecords.ts';

function takeOf(survey: Survey, midi: number, isUsable = true) {
  const quality = { ...exampleReading().quality, isUsable };
  return exampleTake(survey, { midi, reading: exampleReading({ midi, quality }) });
}

it('readChangeBaseline gives each string where it stood last, and leaves out takes that are no good', async () => {
  const records = await openRecords(newId());
  const instrument = exampleInstrument();
  const first = exampleVisit(instrument, { visitedOn: '2023-05-01' });
  const second = exampleVisit(instrument, { visitedOn: '2024-05-01' });
  const now = exampleVisit(instrument, { visitedOn: '2025-05-01' });
  const left = exampleSurvey(first, { stage: 'as-left' });
  const sampled = exampleSurvey(second, { scope: { kind: 'sample', notesMidi: [60, 61] } });
  await records.saveInstrument(instrument);
  for (const visit of [first, second, now]) await records.saveVisit(visit);
  for (const survey of [left, sampled]) await records.saveSurvey(survey);
  const takes = [takeOf(left, 60), takeOf(left, 61), takeOf(left, 62), takeOf(sampled, 60), takeOf(sampled, 61, false)];
  for (const take of takes)
    expect(await records.keepTake(take, { isBetter: () => true })).toMatchObject({ written: true });
  const baseline = await readChangeBaseline(records, exampleSurvey(now));
  expect(baseline?.map(({ reading, visitedOn, stage }) => [reading.midi, visitedOn, stage])).toEqual([
    [60, '2024-05-01', 'as-found'],
    [61, '2023-05-01', 'as-left'],
    [62, '2023-05-01', 'as-left'],
  ]);
  expect(await readChangeBaseline(records, exampleSurvey(first))).toBeNull();
  records.close();
});
