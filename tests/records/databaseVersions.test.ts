import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { Dexie } from 'dexie';
import { expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId } from '../../src/piano/ids.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords } from '../../src/records/records.ts';

const rowsFile = new URL('../fixtures/databaseVersion1/rows.json', import.meta.url);
const idOf = (number: number): string => `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;

/** Puts a stored database back into the browser's, with the stores of its own version and nothing of today's code. */
async function restoreVersion1(databaseName: string): Promise<void> {
  const stored = new Dexie(databaseName);
  stored.version(1).stores({
    instruments: 'id',
    events: 'id, instrumentId',
    visits: 'id, instrumentId',
    surveys: 'id, visitId, instrumentId',
    takes: 'id, [surveyId+midi+stringPosition], [instrumentId+keptFlag]',
  });
  await stored.open();
  const tables = JSON.parse(readFileSync(rowsFile, 'utf8'), revive) as Record<string, readonly unknown[]>;
  for (const [name, rows] of Object.entries(tables)) await stored.table(name).bulkAdd([...rows]);
  stored.close();
}

function revive(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('float64' in value)) return value;
  return Float64Array.from(value.float64 as readonly (number | 'NaN')[], Number);
}

it('opens a database of version 1 and reads all of it', async () => {
  const name = newId();
  await restoreVersion1(name);
  const records = await openRecords(name);
  const instrumentId = idOf(1) as InstrumentId;
  expect(await records.listInstruments()).toMatchObject([
    { id: instrumentId, name: 'The attic upright', bassBridgeTopMidi: 52, remark: 'Kept since version 1.' },
  ]);
  expect(await records.eventsOf(instrumentId)).toMatchObject([{ kind: 'restrung', happenedOn: '2020-03-01' }]);
  expect(await records.visitsOf(instrumentId)).toMatchObject([
    { visitedOn: '2021-05-04', humidityPct: 45, temperatureC: 20.5 },
    { visitedOn: '2022-01-12', humidityPct: null },
  ]);
  const stages = (await records.surveysOfInstrument(instrumentId)).map((survey) => survey.stage);
  expect(stages).toEqual(['as-left', 'as-found']);
  expect((await records.takesOfSurvey(idOf(5) as SurveyId)).map((take) => [take.id, take.isKept])).toEqual([
    [idOf(7), true],
    [idOf(8), false],
  ]);
  expect((await records.keptTakesOfInstrument(instrumentId)).map((take) => take.id)).toEqual([idOf(7), idOf(9)]);
  expect(records.damagedRows()).toEqual([]);
  records.close();
});

it('reads the figures of version 1 as they were measured', async () => {
  const name = newId();
  await restoreVersion1(name);
  const records = await openRecords(name);
  const [clean, poor, beating] = await Promise.all([7, 8, 9].map((number) => records.take(idOf(number) as TakeId)));
  expect(clean?.reading).toMatchObject({ midi: 69, partial1Hz: 440.5, inharmonicityB: 0.00072 });
  expect(clean?.reading.partials.map((partial) => partial.frequencyHz)).toEqual([440.5, 882]);
  expect(poor?.reading).toMatchObject({
    inharmonicityB: null,
    partials: [],
    unisonStringsCents: [-1.5, 0.25, 2],
    quality: { isClipped: true, isUsable: false, faults: ['clipped', 'speech'] },
  });
  expect(beating?.reading.partials[0]).toMatchObject({ promptDecayTimeS: 3, afterDecayTimeS: 4.5, beats: [] });
  expect(beating?.reading.partials[1]).toMatchObject({
    promptDecayTimeS: null,
    beats: [{ rateHz: 0.62, depthDb: 7.5 }],
    components: [{ frequencyHz: 2102.5 }, { frequencyHz: 2103.12 }],
  });
  records.close();
});
