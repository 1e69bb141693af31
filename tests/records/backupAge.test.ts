import 'fake-indexeddb/auto';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { BACKUP_SETTINGS, backupAge, isBackupDue } from '../../src/records/backupAge.ts';
import { newId } from '../../src/records/newId.ts';
import { openRecords, type Records } from '../../src/records/records.ts';
import { exampleInstrument, exampleSurvey, exampleVisit } from './exampleRecords.ts';

const day = (iso: string) => new Date(`${iso}T12:00:00Z`);
let records: Records;

beforeEach(async () => {
  records = await openRecords(newId());
});
afterEach(() => records.close());

async function surveyOn(iso: string, isDemonstration = false): Promise<void> {
  const instrument = exampleInstrument({ isDemonstration });
  await records.saveInstrument(instrument);
  await records.saveSurvey(exampleSurvey(exampleVisit(instrument, { visitedOn: iso })));
}

const isDueOn = async (iso: string) => isBackupDue(await backupAge(records), day(iso));

it('asks for nothing where nothing is at stake', async () => {
  await surveyOn('2024-01-01', true);
  expect(await isDueOn('2026-01-01')).toBe(false);
});

it('asks a day after the first survey, and thirty days after a backup where a survey was begun since', async () => {
  await surveyOn('2024-03-01');
  expect(await isDueOn('2024-03-01')).toBe(false);
  expect(await isDueOn('2024-03-03')).toBe(true);
  await records.saveSetting(BACKUP_SETTINGS.lastAt, '2024-03-03T12:00:00Z');
  expect(await isDueOn('2024-06-01')).toBe(false);
  await surveyOn('2024-03-05');
  expect(await isDueOn('2024-04-01')).toBe(false);
  expect(await isDueOn('2024-04-03')).toBe(true);
});

it('asks at once after many surveys', async () => {
  await records.saveSetting(BACKUP_SETTINGS.lastAt, '2024-03-01T12:00:00Z');
  for (let index = 0; index < 5; index += 1) await surveyOn('2024-03-02');
  expect(await isDueOn('2024-03-03')).toBe(false);
  await surveyOn('2024-03-02');
  expect(await isDueOn('2024-03-03')).toBe(true);
});

it('keeps to what was set: how many days, never, not before', async () => {
  await records.saveSetting(BACKUP_SETTINGS.lastAt, '2024-03-01T00:00:00Z');
  await surveyOn('2024-03-02');
  await records.saveSetting(BACKUP_SETTINGS.reminderDays, 7);
  expect(await isDueOn('2024-03-08')).toBe(true);
  await records.saveSetting(BACKUP_SETTINGS.putOffUntil, day('2024-03-15').toISOString());
  expect(await isDueOn('2024-03-08')).toBe(false);
  expect(await isDueOn('2024-03-16')).toBe(true);
  await records.saveSetting(BACKUP_SETTINGS.reminderDays, 0);
  expect(await isDueOn('2025-03-16')).toBe(false);
});
