import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { SurveyId } from '../../../src/piano/ids.ts';
import type { Survey } from '../../../src/piano/instrument.ts';
import { newId } from '../../../src/records/newId.ts';
import { openRecords, type Records } from '../../../src/records/records.ts';
import { emptySurvey } from '../../../src/screens/visit/emptySurvey.ts';
import { exampleInstrument, exampleSurvey, exampleTake, exampleVisit } from '../../records/exampleRecords.ts';

const instrument = exampleInstrument();
const visit = exampleVisit(instrument);
const survey: Survey = { ...exampleSurvey(visit), stage: 'as-found' };
const take = exampleTake(survey);
const nobody = async () => false;

let records: Records;
beforeEach(async () => {
  records = await openRecords(newId());
  await records.saveInstrument(instrument);
  await records.saveVisit(visit);
  await records.saveSurvey(survey);
});
afterEach(() => records.close());

const found = (isOpen: (id: SurveyId) => Promise<boolean> = nobody, stage: Survey['stage'] = 'as-found') =>
  emptySurvey([survey], stage, { records, isOpen });

describe('a survey to be begun again', () => {
  it('is one of the same stage in which nothing was ever recorded', async () => {
    expect(await found()).toBe(survey.id);
    expect(await found(nobody, 'as-left')).toBeNull();
  });

  it('is not one with a take, kept or set aside: it was recorded as the survey says', async () => {
    await records.keepTake(take);
    expect(await found()).toBeNull();
    await records.setKept(take.id, false);
    expect(await found()).toBeNull();
  });

  it('is not one whose takes lie in the bin, since they may come back', async () => {
    await records.keepTake(take);
    await records.deleteRows([{ table: 'takes', id: take.id }]);
    expect(await found()).toBeNull();
  });

  it('is not one that a page has open', async () => {
    expect(await found(async (id) => id === survey.id)).toBeNull();
  });
});
