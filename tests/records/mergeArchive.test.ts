import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { LeftOut } from '../../src/files/archive/archiveContents.ts';
import { type Archive, openArchive } from '../../src/files/archive/readArchive.ts';
import { writeArchive } from '../../src/files/archive/writeArchive.ts';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import type { Take } from '../../src/piano/instrument.ts';
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

let mine: Records;
let yours: Records;
beforeEach(async () => {
  [mine, yours] = await Promise.all([openRecords(newId()), openRecords(newId())]);
});
afterEach(() => {
  mine.close();
  yours.close();
});

async function archiveOf(records: Records, leaveOut: readonly LeftOut[] = []): Promise<Archive> {
  const pieces: Uint8Array[] = [];
  const options = { createdAt: '2026-01-02T03:04:05Z', programVersion: '0.1.0', leaveOut };
  await writeArchive(await records.archiveContents(null), options, (bytes) => void pieces.push(bytes.slice()));
  const outcome = await openArchive(bytesAsSource(new Uint8Array(Buffer.concat(pieces))));
  if (!outcome.opened) throw outcome.fault;
  return outcome.archive;
}

const bring = async (from: Records, to: Records) => to.mergeArchive(await archiveOf(from));

async function write(records: Records, name = 'The attic upright') {
  const instrument = exampleInstrument({ name, ownerName: 'Somebody' });
  const visit = exampleVisit(instrument);
  const survey = exampleSurvey(visit);
  const take = exampleTake(survey);
  await records.saveInstrument(instrument);
  await records.saveVisit(visit);
  await records.saveSurvey(survey);
  await records.keepTake(take);
  await records.saveSound(exampleSound(take));
  return { instrument, visit, survey, take };
}

const totals = ({ instruments }: Awaited<ReturnType<typeof bring>>) => ({
  newRows: instruments.reduce((sum, { newRows }) => sum + newRows, 0),
  changedRows: instruments.reduce((sum, { changedRows }) => sum + changedRows, 0),
  deletedRows: instruments.reduce((sum, { deletedRows }) => sum + deletedRows, 0),
  rivals: instruments.reduce((sum, { rivals }) => sum + rivals, 0),
});

describe('an archive brought in', () => {
  it('gives the same records on another device, sounds included, and nothing the second time', async () => {
    const { take } = await write(mine);
    await write(mine, 'The other');
    const report = await bring(mine, yours);
    expect(totals(report)).toEqual({ newRows: 8, changedRows: 0, deletedRows: 0, rivals: 0 });
    expect(report).toMatchObject({ soundCount: 2, unplacedCount: 0 });
    expect(await yours.readRecordSet()).toEqual(await mine.readRecordSet());
    expect(await yours.sound(take.id)).toEqual(await mine.sound(take.id));
    const again = await bring(mine, yours);
    expect(totals(again)).toEqual({ newRows: 0, changedRows: 0, deletedRows: 0, rivals: 0 });
    expect(again.soundCount).toBe(0);
  });

  it('meets a take that stands under another instrument here, among so many that they are not looked for one by one', async () => {
    const { survey } = await write(mine);
    const takes = Array.from({ length: 210 }, (_, index) => exampleTake(survey, { midi: 21 + (index % 85) }));
    await mine.writeRecordSet({ ...(await mine.readRecordSet()), takes });
    await mine.setKept(takes[100]?.id as Take['id'], true);
    const { survey: other } = await write(yours, 'The other');
    const same = exampleTake(other, { id: takes[100]?.id as Take['id'], midi: 40 });
    await yours.keepTake(same);
    expect(totals(await yours.mergeArchive(await archiveOf(mine), { isDryRun: true }))).toMatchObject({ rivals: 1 });
    expect(totals(await bring(mine, yours))).toMatchObject({ newRows: 213, rivals: 1 });
    expect((await yours.takesOfSurvey(survey.id)).length + (await yours.takesOfSurvey(other.id)).length).toBe(212);
    const [pair] = await yours.listRivals();
    expect([pair?.shown.id, pair?.other.id]).toEqual([same.id, same.id]);
    expect(totals(await bring(mine, yours))).toEqual({ newRows: 0, changedRows: 0, deletedRows: 0, rivals: 0 });
  });

  it('says what it would do without doing it', async () => {
    await write(mine);
    const report = await yours.mergeArchive(await archiveOf(mine), { isDryRun: true });
    expect(totals(report).newRows).toBe(4);
    expect(report.instruments).toMatchObject([{ name: 'The attic upright' }]);
    expect(await yours.listInstruments()).toEqual([]);
  });

  it('brings back what was lost, out of a backup', async () => {
    const { instrument, visit } = await write(mine);
    const backup = await archiveOf(mine);
    const fresh = await openRecords(newId());
    await fresh.mergeArchive(backup);
    expect(await fresh.visitsOf(instrument.id)).toEqual([visit]);
    fresh.close();
  });

  it('keeps an owner’s name that the other side left out', async () => {
    const { instrument } = await write(mine);
    await bring(mine, yours);
    await yours.mergeArchive(await archiveOf(mine, ['owners']));
    expect((await yours.instrument(instrument.id))?.ownerName).toBe('Somebody');
    const stranger = await openRecords(newId());
    await stranger.mergeArchive(await archiveOf(mine, ['owners']));
    expect(await stranger.instrument(instrument.id)).not.toHaveProperty('ownerName');
    stranger.close();
  });
});

describe('two people’s records', () => {
  it('keep what each added', async () => {
    const { instrument, survey } = await write(mine);
    await bring(mine, yours);
    await mine.saveEvent(exampleEvent(instrument));
    await yours.keepTake(exampleTake(survey, { midi: 70 }));
    await bring(mine, yours);
    await bring(yours, mine);
    expect(await mine.readRecordSet()).toEqual(await yours.readRecordSet());
    expect(await mine.takesOfSurvey(survey.id)).toHaveLength(2);
    expect(await yours.eventsOf(instrument.id)).toHaveLength(1);
  });

  it('take over what one changed, and a deletion', async () => {
    const { instrument, visit } = await write(mine);
    await bring(mine, yours);
    await mine.saveVisit({ ...visit, remark: 'Heard a buzz.' });
    expect(totals(await bring(mine, yours)).changedRows).toBe(1);
    expect((await yours.visit(visit.id))?.remark).toBe('Heard a buzz.');
    await yours.deleteRows([{ table: 'visits', id: visit.id }]);
    expect(totals(await bring(yours, mine)).deletedRows).toBe(3);
    expect(await mine.visitsOf(instrument.id)).toEqual([]);
    expect(await mine.listBin()).toHaveLength(1);
  });

  it('do not bring back what was taken away for good', async () => {
    const { instrument } = await write(mine);
    const old = await archiveOf(mine);
    const outcome = await mine.deleteRows([{ table: 'instruments', id: instrument.id }]);
    if (outcome.written) await mine.purge(outcome.deletionIds);
    await mine.mergeArchive(old);
    expect(await mine.listInstruments()).toEqual([]);
    expect(await mine.listBin()).toEqual([]);
  });

  it('stand side by side where both changed one row, until somebody chooses, and the choice travels', async () => {
    const { visit } = await write(mine);
    await bring(mine, yours);
    await mine.saveVisit({ ...visit, humidityPct: 41 });
    await yours.saveVisit({ ...visit, humidityPct: 52 });
    expect(totals(await bring(yours, mine)).rivals).toBe(1);
    await bring(mine, yours);
    const [pair] = await mine.listRivals();
    expect(pair).toMatchObject({ table: 'visits', rowId: visit.id, instrumentName: 'The attic upright' });
    expect(pair?.differences.map(({ path }) => path)).toEqual([['humidityPct']]);
    expect(await yours.visit(visit.id)).toEqual(await mine.visit(visit.id));
    expect(await mine.chooseVersion('visits', visit.id, pair?.rivalId ?? '')).toEqual({ written: true });
    expect(await mine.listRivals()).toEqual([]);
    await bring(mine, yours);
    expect(await yours.listRivals()).toEqual([]);
    expect(await yours.visit(visit.id)).toEqual(await mine.visit(visit.id));
  });

  it('an edit of the shown version does not sweep the other one away', async () => {
    const { visit } = await write(mine);
    await bring(mine, yours);
    await mine.saveVisit({ ...visit, humidityPct: 41 });
    await yours.saveVisit({ ...visit, humidityPct: 52 });
    await bring(yours, mine);
    const shown = await mine.visit(visit.id);
    await mine.saveVisit({ ...visit, ...shown, remark: 'Looked again.' });
    await bring(mine, yours);
    const humidities = async (records: Records) => {
      const pairs = await records.listRivals();
      return pairs.flatMap(({ shown: one, other }) => [one, other]).map((row) => (row as typeof visit).humidityPct);
    };
    expect((await humidities(mine)).sort()).toEqual([41, 52]);
    expect((await humidities(yours)).sort()).toEqual([41, 52]);
  });
});

it('stops when told to, and goes on where it stopped', async () => {
  for (let index = 0; index < 3; index += 1) await write(mine, `Number ${index}`);
  const archive = await archiveOf(mine);
  const signal = { aborted: false };
  const stopped = yours.mergeArchive(archive, {
    signal,
    onProgress: () => {
      signal.aborted = true;
    },
  });
  await expect(stopped).rejects.toMatchObject({ reason: 'cancelled' });
  await yours.mergeArchive(archive);
  expect(await yours.readRecordSet()).toEqual(await mine.readRecordSet());
});

it('keeps two takes’ figures apart that were measured again on two devices, whatever travels how often', async () => {
  const { take } = await write(mine);
  await bring(mine, yours);
  const measured = { programVersion: '0.2.0', measuredAt: '2026-01-02T03:04:05Z' };
  const again = (offsetCents: number) => [{ takeId: take.id, measured, reading: { ...take.reading, offsetCents } }];
  expect(await mine.addReadings(again(1.5))).toEqual({ written: true });
  expect(await yours.addReadings(again(2.5))).toEqual({ written: true });
  for (let index = 0; index < 2; index += 1) {
    await bring(yours, mine);
    await bring(mine, yours);
  }
  for (const records of [mine, yours]) {
    const pairs = await records.listRivals();
    expect(pairs.map(({ differences }) => differences.map(({ path }) => path.join('.')))).toEqual([
      ['reading.offsetCents'],
    ]);
  }
  expect(await mine.take(take.id)).toEqual(await yours.take(take.id));
});
