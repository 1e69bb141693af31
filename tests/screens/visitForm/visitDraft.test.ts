import { describe, expect, it } from 'vitest';
import type { InstrumentId, VisitId } from '../../../src/piano/ids.ts';
import type { Visit } from '../../../src/piano/instrument.ts';
import {
  emptyVisitDraft,
  readVisit,
  type VisitDraft,
  type VisitFaults,
  visitToDraft,
} from '../../../src/screens/visitForm/visitDraft.ts';

const VISIT: Visit = {
  id: 'v1' as VisitId,
  instrumentId: 'i1' as InstrumentId,
  visitedOn: '2024-02-29',
  visitedBy: 'A. N.',
  humidityPct: 41.5,
  temperatureC: -1,
  pitchStandardHz: 438.5,
  remark: 'cold hall',
};
const EMPTY = emptyVisitDraft('2024-03-01', null);

describe('the form of a visit', () => {
  it('takes a date alone; climate that nobody read stays unknown', () => {
    const read = readVisit(EMPTY);
    expect(read.isSound && read.visit).toMatchObject({
      visitedOn: '2024-03-01',
      humidityPct: null,
      temperatureC: null,
      pitchStandardHz: 440,
    });
  });

  it('gives back what was stored when nothing is changed', () => {
    const { id: _id, instrumentId: _instrumentId, ...fields } = VISIT;
    expect(readVisit(visitToDraft(VISIT))).toEqual({ isSound: true, visit: fields });
  });

  it('goes on with the pitch standard and the visitor of the visit before, not with its climate', () => {
    expect(emptyVisitDraft('2024-09-01', VISIT)).toMatchObject({
      pitchChoice: 'other',
      pitchHz: '438.5',
      visitedBy: 'A. N.',
      humidity: '',
    });
  });

  it('understands a decimal comma and a true minus sign', () => {
    const read = readVisit({ ...EMPTY, humidity: '41,5', temperature: '−2.5' });
    expect(read.isSound && [read.visit.humidityPct, read.visit.temperatureC]).toEqual([41.5, -2.5]);
  });

  it.each<[string, Partial<VisitDraft>, VisitFaults]>([
    ['no date', { visitedOn: '' }, { visitedOn: 'date-missing' }],
    ['a humidity above 100 %', { humidity: '101' }, { humidity: 'humidity-not-a-number' }],
    ['a humidity in words', { humidity: 'dry' }, { humidity: 'humidity-not-a-number' }],
    ['a temperature of an oven', { temperature: '200' }, { temperature: 'temperature-not-a-number' }],
    ['an empty pitch', { pitchChoice: 'other', pitchHz: '' }, { pitchHz: 'pitch-not-a-number' }],
    ['a pitch of another note', { pitchChoice: 'other', pitchHz: '220' }, { pitchHz: 'pitch-not-a-number' }],
  ])('refuses %s and names the field', (_what, change, faults) => {
    expect(readVisit({ ...EMPTY, ...change })).toEqual({ isSound: false, faults });
  });

  it('does not mind what stands in the pitch field while a common pitch is chosen', () => {
    const read = readVisit({ ...EMPTY, pitchChoice: '435', pitchHz: 'x' });
    expect(read.isSound && read.visit.pitchStandardHz).toBe(435);
  });
});
