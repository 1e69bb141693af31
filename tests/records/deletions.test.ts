import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { PhotographId, TorqueId } from '../../src/piano/ids.ts';
import type { Photograph } from '../../src/piano/photograph.ts';
import type { TorqueReading } from '../../src/piano/stringingRecords.ts';
import { createDatabase, type RecordsDatabase } from '../../src/records/database.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import {
  exampleEvent,
  exampleInstrument,
  exampleSound,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from './exampleRecords.ts';

let records: Records;
let raw: RecordsDatabase;

beforeEach(async () => {
  const name = newId();
  records = await openRecords(name);
  raw = createDatabase(name);
});
afterEach(() => {
  records.close();
  raw.close();
});

/** An instrument with everything that can hang on one, written through the records. */
async function wholeInstrument(name = 'The attic upright') {
  const instrument = exampleInstrument({ name });
  const visit = exampleVisit(instrument);
  const survey = exampleSurvey(visit);
  const take = exampleTake(survey);
  const event = exampleEvent(instrument);
  const torque: TorqueReading = {
    id: newId<TorqueId>(),
    instrumentId: instrument.id,
    visitId: visit.id,
    midi: 60,
    stringPosition: 1,
    torqueNm: 8,
    direction: 'flatwards',
    remark: '',
  };
  const photograph: Photograph = {
    id: newId<PhotographId>(),
    instrumentId: instrument.id,
    visitId: visit.id,
    midi: null,
    stringPosition: null,
    takenAt: null,
    addedAt: '2021-05-04T10:00:00Z',
    caption: 'The block from above',
    widthPx: 2000,
    heightPx: 1500,
    mediaType: 'image/jpeg',
  };
  const bytes = Uint8Array.of(1, 2, 3);
  const outcomes = [
    await records.saveInstrument(instrument),
    await records.saveVisit(visit),
    await records.saveSurvey(survey),
    await records.keepTake(take),
    await records.saveSound(exampleSound(take)),
    await records.saveEvent(event),
    await records.saveTorque(torque),
    await records.addPhotograph(photograph, { id: photograph.id, instrumentId: instrument.id, bytes }),
  ];
  expect(outcomes.every((outcome) => outcome.written)).toBe(true);
  return { instrument, visit, survey, take, event, torque, photograph };
}

type Whole = Awaited<ReturnType<typeof wholeInstrument>>;

/** Everything that any read gives of it. */
async function shown({ instrument, visit, survey, take }: Whole) {
  return {
    instruments: (await records.listInstruments()).filter(({ id }) => id === instrument.id),
    visits: await records.visitsOf(instrument.id),
    visit: (await records.visit(visit.id)) ?? null,
    surveys: await records.surveysOf(visit.id),
    ofInstrument: await records.surveysOfInstrument(instrument.id),
    takes: await records.takesOfSurvey(survey.id),
    take: (await records.take(take.id)) ?? null,
    kept: await records.keptTakesOfInstrument(instrument.id),
    sounds: (await records.soundSizes(survey.id)).takeIds,
    events: await records.eventsOf(instrument.id),
    torques: await records.torquesOf(instrument.id),
    photographs: await records.photographsOf(instrument.id),
  };
}

async function deleted(target: Parameters<Records['deleteRows']>[0][number]): Promise<string> {
  const outcome = await records.deleteRows([target]);
  if (!outcome.written) throw new Error(outcome.message);
  return outcome.deletionIds[0] ?? '';
}

describe('deleting an instrument', () => {
  it('hides it and all that hangs on it, leaves others alone, and comes back exactly as it was', async () => {
    const [whole, other] = [await wholeInstrument(), await wholeInstrument('The other')];
    const [before, otherBefore] = [await shown(whole), await shown(other)];
    const outcome = await records.deleteRows([{ table: 'instruments', id: whole.instrument.id }]);
    expect(outcome).toMatchObject({ written: true, rowCount: 7 });
    for (const [name, rows] of Object.entries(await shown(whole))) expect([name, rows ?? []]).toEqual([name, []]);
    expect(await shown(other)).toEqual(otherBefore);
    expect(outcome.written && (await records.restore(outcome.deletionIds))).toMatchObject({
      written: true,
      rowCount: 7,
    });
    expect(await shown(whole)).toEqual(before);
  });

  it('counts as an edit of every row, and so does bringing it back', async () => {
    const { instrument, take } = await wholeInstrument();
    const id = await deleted({ table: 'instruments', id: instrument.id });
    const device = (await raw.settings.get('deviceId'))?.value as string;
    expect(await raw.takes.get(take.id)).toMatchObject({ deletionId: id, stamp: { [device]: 2 } });
    await records.restore([id]);
    const row = await raw.takes.get(take.id);
    expect(row).toMatchObject({ stamp: { [device]: 3 } });
    expect(row).not.toHaveProperty('deletedAt');
    expect(row).not.toHaveProperty('deletionId');
  });

  it('says so where there is none, and again where it is deleted already', async () => {
    const { instrument } = await wholeInstrument();
    await deleted({ table: 'instruments', id: instrument.id });
    const again = await records.deleteRows([{ table: 'instruments', id: instrument.id }]);
    expect(again).toMatchObject({ written: false, reason: 'not-a-record' });
  });
});

describe('deleting less than an instrument', () => {
  it('takes with a visit its surveys, takes, torque and photographs, and nothing else', async () => {
    const whole = await wholeInstrument();
    await deleted({ table: 'visits', id: whole.visit.id });
    const after = await shown(whole);
    expect([after.visits, after.surveys, after.takes, after.torques, after.photographs]).toEqual([[], [], [], [], []]);
    expect(after.instruments).toEqual([whole.instrument]);
    expect(after.events).toEqual([whole.event]);
  });

  it('leaves what was deleted before in its own deletion', async () => {
    const whole = await wholeInstrument();
    const first = await deleted({ table: 'takes', id: whole.take.id });
    const second = await deleted({ table: 'visits', id: whole.visit.id });
    await records.restore([second]);
    expect(await records.takesOfSurvey(whole.survey.id)).toEqual([]);
    await records.restore([first]);
    expect(await records.takesOfSurvey(whole.survey.id)).toEqual([whole.take]);
  });

  it('brings back what holds a survey together with it', async () => {
    const whole = await wholeInstrument();
    const before = await shown(whole);
    const survey = await deleted({ table: 'surveys', id: whole.survey.id });
    await deleted({ table: 'visits', id: whole.visit.id });
    await deleted({ table: 'instruments', id: whole.instrument.id });
    await records.restore([survey]);
    expect(await shown(whole)).toEqual(before);
    expect(await records.listBin()).toEqual([]);
  });

  it('keeps one kept take at each place when a deleted one comes back', async () => {
    const { take, survey } = await wholeInstrument();
    const id = await deleted({ table: 'takes', id: take.id });
    const newer = exampleTake(survey, { recordedAt: '2021-05-04T10:01:00.000Z' });
    expect(await records.keepTake(newer)).toMatchObject({ isKept: true, setAside: null });
    await records.restore([id]);
    const kept = (await records.takesOfSurvey(survey.id)).map((found) => [found.id, found.isKept]);
    expect(kept).toEqual([
      [take.id, false],
      [newer.id, true],
    ]);
  });
});

describe('the bin', () => {
  it('names what was deleted, where it belonged, and how much comes back with it', async () => {
    const whole = await wholeInstrument();
    await deleted({ table: 'events', id: whole.event.id });
    await deleted({ table: 'surveys', id: whole.survey.id });
    const bin = await records.listBin();
    const bySurvey = bin.find(({ what }) => what.table === 'surveys');
    expect(bin).toHaveLength(2);
    expect(bySurvey).toMatchObject({ rowCount: 2, instrumentName: 'The attic upright', visitedOn: '2021-05-04' });
    expect(bySurvey?.what.row).toMatchObject({ stage: 'as-found' });
    expect(bin.find(({ what }) => what.table === 'events')).toMatchObject({ rowCount: 1, visitedOn: null });
  });

  it('is told to who observes it', async () => {
    const whole = await wholeInstrument();
    const seen: number[] = [];
    const stop = records.observe(
      () => records.listBin(),
      (bin) => seen.push(bin.length),
      () => seen.push(-1),
    );
    await expect.poll(() => seen.at(-1)).toBe(0);
    await deleted({ table: 'visits', id: whole.visit.id });
    await expect.poll(() => seen.at(-1)).toBe(1);
    stop();
  });
});

describe('purging', () => {
  const later = (days: number) => new Date(Date.now() + days * 86_400_000);

  it('takes rows, sounds and bytes away after thirty days, and leaves a note of each row', async () => {
    const whole = await wholeInstrument();
    const other = await wholeInstrument('The other');
    await deleted({ table: 'instruments', id: whole.instrument.id });
    expect(await records.purgeOld(later(29))).toEqual({ written: true, rowCount: 0 });
    expect(await records.listBin()).toHaveLength(1);
    expect(await records.purgeOld(later(31))).toEqual({ written: true, rowCount: 7 });
    expect(await records.listBin()).toEqual([]);
    const counts = await Promise.all(
      ['instruments', 'takes', 'sounds', 'photographFiles'].map((name) => raw.table(name).count()),
    );
    expect(counts).toEqual([1, 1, 1, 1]);
    expect(await raw.gone.get(`takes/${whole.take.id}`)).toMatchObject({
      instrumentId: whole.instrument.id,
      stamp: { [(await raw.settings.get('deviceId'))?.value as string]: 2 },
    });
    expect((await shown(other)).takes).toEqual([other.take]);
  });

  it('leaves a deletion alone on which something hangs that nobody deleted', async () => {
    const whole = await wholeInstrument();
    const id = await deleted({ table: 'surveys', id: whole.survey.id });
    const late = exampleTake(whole.survey, { midi: 70 });
    await records.keepTake(late);
    expect(await records.purge([id])).toEqual({ written: true, rowCount: 0 });
    await records.restore([id]);
    expect((await records.takesOfSurvey(whole.survey.id)).map((take) => take.id).sort()).toEqual(
      [whole.take.id, late.id].sort(),
    );
  });
});
