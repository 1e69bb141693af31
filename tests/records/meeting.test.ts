import 'fake-indexeddb/auto';
import { afterEach, expect, it } from 'vitest';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import type { MeetingPlace } from '../../src/records/meetingPlace.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import { exampleInstrument, exampleSound, exampleSurvey, exampleTake, exampleVisit } from './exampleRecords.ts';

const opened: Records[] = [];
afterEach(() => {
  for (const records of opened.splice(0)) records.close();
});

async function device(): Promise<Records> {
  const records = await openRecords(newId());
  opened.push(records);
  return records;
}

/** A folder in memory; files are there once they are finished, and never change. */
function folder(): MeetingPlace & { readonly files: Map<string, Uint8Array<ArrayBuffer>> } {
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  return {
    files,
    names: async () => [...files.keys()],
    open: async (name) => bytesAsSource(files.get(name) ?? new Uint8Array()),
    create: async (name) => {
      const pieces: Uint8Array[] = [];
      return {
        write: async (bytes) => void pieces.push(bytes.slice()),
        finish: async () => {
          expect(files.has(name)).toBe(false);
          files.set(name, new Uint8Array(Buffer.concat(pieces)));
        },
        discard: async () => undefined,
      };
    },
  };
}

const options = { now: '2026-01-02T03:04:05Z', programVersion: '0.1.0' };

async function write(records: Records, name: string) {
  const instrument = exampleInstrument({ name });
  const visit = exampleVisit(instrument);
  const survey = exampleSurvey(visit);
  const take = exampleTake(survey);
  await records.saveInstrument(instrument);
  await records.saveVisit(visit);
  await records.saveSurvey(survey);
  await records.keepTake(take);
  await records.saveSound(exampleSound(take));
  return { visit, survey, take };
}

it('brings three devices together whatever the order, each adding files of its own', async () => {
  const place = folder();
  const [one, two, three] = [await device(), await device(), await device()];
  const { take } = await write(one, 'First');
  await write(two, 'Second');
  await one.meet(place, options);
  await two.meet(place, options);
  await three.meet(place, options);
  await one.meet(place, options);
  expect(await two.readRecordSet()).toEqual(await one.readRecordSet());
  expect(await three.readRecordSet()).toEqual(await one.readRecordSet());
  expect(await three.sound(take.id)).toEqual(await one.sound(take.id));
  expect(place.files.size).toBe(2);
});

it('adds only what is new, and nothing where nothing is', async () => {
  const place = folder();
  const [one, two] = [await device(), await device()];
  const { survey } = await write(one, 'First');
  expect((await one.meet(place, options)).addedName).toMatch(/-000001\.zip$/);
  expect((await one.meet(place, options)).addedName).toBeNull();
  await two.meet(place, options);
  await two.keepTake(exampleTake(survey, { midi: 70 }));
  const added = await two.meet(place, options);
  expect(added.addedName).toMatch(/-000001\.zip$/);
  const [whole = 0, small = 0] = [...place.files.values()].map((bytes) => bytes.length);
  expect(small).toBeLessThan(whole);
  expect(await one.meet(place, options)).toMatchObject({ readCount: 1, changedCount: 1, addedName: null });
  expect(await one.takesOfSurvey(survey.id)).toHaveLength(2);
});

it('leaves a file that is still being copied for the next time', async () => {
  const place = folder();
  const [one, two] = [await device(), await device()];
  await write(one, 'First');
  await one.meet(place, options);
  const [[name, whole] = ['', new Uint8Array()]] = place.files;
  place.files.set(name, whole.slice(0, whole.length / 2));
  expect(await two.meet(place, options)).toMatchObject({ readCount: 0, unreadable: [name], addedName: null });
  place.files.set(name, whole);
  expect(await two.meet(place, options)).toMatchObject({ readCount: 1, unreadable: [] });
  expect(await two.readRecordSet()).toEqual(await one.readRecordSet());
});

it('carries what both changed apart as two versions to both', async () => {
  const place = folder();
  const [one, two] = [await device(), await device()];
  const { visit } = await write(one, 'First');
  await one.meet(place, options);
  await two.meet(place, options);
  await one.saveVisit({ ...visit, humidityPct: 40 });
  await two.saveVisit({ ...visit, humidityPct: 50 });
  await one.meet(place, options);
  expect(await two.meet(place, options)).toMatchObject({ rivalCount: 1 });
  expect(await one.meet(place, options)).toMatchObject({ rivalCount: 1 });
  expect(await one.visit(visit.id)).toEqual(await two.visit(visit.id));
  expect(await one.listRivals()).toHaveLength(1);
});
