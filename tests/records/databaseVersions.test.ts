import 'fake-indexeddb/auto';
import { readFileSync } from 'node:fs';
import { Dexie } from 'dexie';
import { expect, it } from 'vitest';
import { decodeTakeSound } from '../../src/files/audio/takeSound.ts';
import type { CalibrationId, InstrumentId, PhotographId, SurveyId, TakeId } from '../../src/piano/ids.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords } from '../../src/records/records.ts';
import { exampleCalibration, exampleSound } from './exampleRecords.ts';

const idOf = (number: number): string => `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;

const STORES_OF_VERSION_1 = {
  instruments: 'id',
  events: 'id, instrumentId',
  visits: 'id, instrumentId',
  surveys: 'id, visitId, instrumentId',
  takes: 'id, [surveyId+midi+stringPosition], [instrumentId+keptFlag]',
};
const STORES_OF_VERSION_2 = { ...STORES_OF_VERSION_1, sounds: 'id, [surveyId+byteCount], instrumentId' };
const STORES_OF_VERSION_3 = { ...STORES_OF_VERSION_2, calibrations: 'id, deviceLabel' };
const STORES_OF_VERSION = {
  1: STORES_OF_VERSION_1,
  2: STORES_OF_VERSION_2,
  3: STORES_OF_VERSION_3,
  4: {
    ...STORES_OF_VERSION_3,
    instruments: 'id, deletionId',
    events: 'id, instrumentId, deletionId',
    visits: 'id, instrumentId, deletionId',
    surveys: 'id, visitId, instrumentId, deletionId',
    takes: 'id, [surveyId+midi+stringPosition], [instrumentId+keptFlag], deletionId',
    torques: 'id, instrumentId, visitId, deletionId',
    schedules: 'id, instrumentId, deletionId',
    wireGrades: 'id, deletionId',
    decisions: 'id, instrumentId, deletionId',
    trials: 'id, instrumentId, deletionId',
    photographs: 'id, instrumentId, deletionId',
    photographFiles: 'id, instrumentId',
    rivals: 'id, instrumentId',
    gone: 'id',
    settings: 'key',
  },
};

/** Puts a stored database back into the browser's, with the stores of its own version and nothing of today's code. */
async function restore(version: 1 | 2 | 3 | 4): Promise<string> {
  const databaseName = newId();
  const stored = new Dexie(databaseName);
  stored.version(version).stores(STORES_OF_VERSION[version]);
  await stored.open();
  const rowsFile = new URL(`../fixtures/databaseVersion${version}/rows.json`, import.meta.url);
  const tables = JSON.parse(readFileSync(rowsFile, 'utf8'), revive) as Record<string, readonly unknown[]>;
  for (const [name, rows] of Object.entries(tables)) await stored.table(name).bulkAdd([...rows]);
  stored.close();
  return databaseName;
}

function revive(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if ('base64' in value) return new Uint8Array(Buffer.from(String(value.base64), 'base64'));
  if ('float64' in value) return Float64Array.from(value.float64 as readonly (number | 'NaN')[], Number);
  return value;
}

it.each([1, 2, 3, 4] as const)('opens a database of version %i and reads all of it', async (version) => {
  const records = await openRecords(await restore(version));
  const instrumentId = idOf(1) as InstrumentId;
  expect(await records.listInstruments()).toMatchObject([
    { id: instrumentId, name: 'The attic upright', bassBridgeTopMidi: 52, remark: `Kept since version ${version}.` },
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
  const records = await openRecords(await restore(1));
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

it('brings a database of version 1 to this version, where sounds and further readings find their place', async () => {
  const records = await openRecords(await restore(1));
  const before = await records.take(idOf(7) as TakeId);
  if (!before) throw new Error('the take of version 1 is gone');
  expect(before.earlierReadings).toBeUndefined();
  expect(await records.soundSizes()).toEqual({ takeIds: [], byteCount: 0 });
  const sound = exampleSound(before);
  expect(await records.saveSound(sound)).toEqual({ written: true });
  const measured = { programVersion: '9.9.9', measuredAt: '2031-01-01T00:00:00.000Z' };
  expect(
    await records.addReadings([{ takeId: before.id, reading: { ...before.reading, partial1Hz: 441 }, measured }]),
  ).toEqual({
    written: true,
  });
  expect(await records.sound(before.id)).toEqual(sound);
  expect((await records.take(before.id))?.earlierReadings).toEqual([{ reading: before.reading, measured: null }]);
  records.close();
});

it('reads the sound and both figures of version 2', async () => {
  const records = await openRecords(await restore(2));
  const take = await records.take(idOf(7) as TakeId);
  expect(take?.reading.partial1Hz).toBe(440.625);
  expect(take?.measured).toEqual({ programVersion: '0.2.0', measuredAt: '2023-02-03T10:00:00.000Z' });
  expect(take?.earlierReadings).toMatchObject([{ reading: { partial1Hz: 440.5 }, measured: null }]);
  expect(take?.earlierReadings?.[0]?.reading.partials.map(({ frequencyHz }) => frequencyHz)).toEqual([440.5, 882]);
  const sound = await records.sound(idOf(7) as TakeId);
  expect(sound).toMatchObject({ sampleRateHz: 48000, onsetIndex: 100, takeDurationS: 2.5, encoding: 'flac' });
  const { samples, sampleRateHz } = await decodeTakeSound(sound?.bytes ?? new Uint8Array());
  expect([samples.length, sampleRateHz]).toEqual([480, 48000]);
  const written = Array.from({ length: 480 }, (_, at) =>
    at < 100 ? 0 : Math.round(12_000 * Math.exp(-at / 300) * Math.sin((2 * Math.PI * 440 * at) / 48000)) / 32768,
  );
  expect([...samples]).toEqual(written.map((sample) => sample + 0));
  records.close();
});

it.each([1, 2] as const)(
  'gives the calibrations of microphones a place in a database of version %i',
  async (version) => {
    const records = await openRecords(await restore(version));
    expect(await records.calibrationsOf()).toEqual([]);
    expect((await records.survey(idOf(5) as SurveyId))?.calibration).toBeUndefined();
    const calibration = { ...exampleCalibration, id: newId<CalibrationId>() };
    expect(await records.saveCalibration(calibration)).toEqual({ written: true });
    expect(await records.calibrationsOf(calibration.deviceLabel)).toEqual([calibration]);
    expect(await records.calibrationsOf('another microphone')).toEqual([]);
    records.close();
  },
);

it('reads the calibration and the clock of version 3', async () => {
  const records = await openRecords(await restore(3));
  const [calibration] = await records.calibrationsOf('Room microphone');
  expect(calibration).toMatchObject({ offsetPpm: 23.5, reference: { kind: 'tone', statedHz: 440, statedAtC: null } });
  const survey = await records.survey(idOf(5) as SurveyId);
  expect(survey?.clockAgainstSystem).toEqual({ offsetPpm: -12.25, offsetStandardUncertaintyPpm: 1.5 });
  expect(survey?.calibration).toEqual(calibration);
  records.close();
});

it('reads torque, schedule, wire, decision, trial and photograph of version 4, and leaves the deleted out', async () => {
  const records = await openRecords(await restore(4));
  const instrumentId = idOf(1) as InstrumentId;
  expect(await records.torquesOf(instrumentId)).toMatchObject([{ id: idOf(30), torqueNm: 9.5 }]);
  expect(await records.schedulesOf(instrumentId)).toMatchObject([{ rows: [{ midi: 69, speakingLengthMm: 402.5 }] }]);
  expect(await records.listWireGrades()).toMatchObject([{ name: 'Softer wire', rows: [{}, {}] }]);
  expect(await records.decisionsOf(instrumentId)).toMatchObject([{ choice: 'bridge work', doneOn: null }]);
  expect(await records.trialsOf(instrumentId)).toMatchObject([{ takesBefore: [idOf(7)], takesAfter: [idOf(8)] }]);
  const [photograph] = await records.photographsOf(instrumentId);
  expect(photograph).not.toHaveProperty('stamp');
  expect((await records.photographFile(idOf(36) as PhotographId))?.bytes.length).toBe(70);
  expect(records.damagedRows()).toEqual([]);
  records.close();
});

it('stamps each edit with the device that the records of version 4 name, and keeps the stamps of others', async () => {
  const databaseName = await restore(4);
  const records = await openRecords(databaseName);
  const [decision] = await records.decisionsOf(idOf(1) as InstrumentId);
  if (!decision) throw new Error('the decision of version 4 is gone');
  expect(await records.saveDecisions([{ ...decision, doneOn: '2023-05-01' }])).toEqual({ written: true });
  records.close();
  const raw = await new Dexie(databaseName).open();
  expect(await raw.table('decisions').get(decision.id)).toMatchObject({
    doneOn: '2023-05-01',
    stamp: { here: 2, there: 1 },
  });
  raw.close();
});

it('gives records of version 3 a device of their own and stamps from then on', async () => {
  const databaseName = await restore(3);
  const records = await openRecords(databaseName);
  const instrument = await records.instrument(idOf(1) as InstrumentId);
  if (!instrument) throw new Error('the instrument of version 3 is gone');
  await records.saveInstrument(instrument);
  await records.saveInstrument(instrument);
  records.close();
  const raw = await new Dexie(databaseName).open();
  const { value: deviceId } = await raw.table('settings').get('deviceId');
  expect((await raw.table('instruments').get(instrument.id)).stamp).toEqual({ [deviceId]: 2 });
  raw.close();
});
