import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../src/piano/ids.ts';
import type { Survey, Take, Visit } from '../../src/piano/instrument.ts';
import { historyOfRecords } from '../../src/stability/historyOfRecords.ts';
import { stringReading } from './stringReading.ts';

const instrumentId = 'i' as InstrumentId;
const instrument = { compass: { lowestMidi: 21, highestMidi: 108 }, bassBridgeTopMidi: 43, strutsAfterMidi: [43] };

function visit(id: string, visitedOn: string, pitchStandardHz = 440): Visit {
  const climate = { humidityPct: 44, temperatureC: 20 };
  return { id: id as VisitId, instrumentId, visitedOn, visitedBy: '', ...climate, pitchStandardHz, remark: '' };
}

function survey(id: string, visitId: string, strings: Survey['strings'], stage: Survey['stage'] = 'as-found'): Survey {
  return {
    id: id as SurveyId,
    visitId: visitId as VisitId,
    instrumentId,
    stage,
    startedAt: '2020-01-01T10:00:00Z',
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: 48_000,
    strings,
  };
}

function take(surveyId: string, recipe: Parameters<typeof stringReading>[0], isUsable = true): Take {
  const reading = stringReading(recipe);
  return {
    id: `${surveyId} ${reading.midi} ${reading.stringPosition}` as TakeId,
    surveyId: surveyId as SurveyId,
    visitId: 'v' as VisitId,
    instrumentId,
    midi: reading.midi,
    stringPosition: reading.stringPosition,
    recordedAt: '2020-01-01T10:00:00Z',
    isKept: true,
    reading: { ...reading, quality: { ...reading.quality, isUsable } },
  };
}

const records = (surveys: Survey[], takes: Take[], visits = [visit('v', '2020-01-01')]) =>
  historyOfRecords({ instrument, visits, surveys, takes, events: [] });

describe('an instrument’s history', () => {
  it('stands against one pitch, whatever the visit’s pitch standard was', () => {
    const low = visit('w', '2021-01-01', 435);
    const { readings } = records(
      [survey('s', 'v', 'centre strings'), survey('t', 'w', 'centre strings')],
      [take('t', { partial1Hz: 440, pitchStandardHz: 435 }), take('s', { partial1Hz: 440 })],
      [visit('v', '2020-01-01'), low],
    );
    expect(readings.map(({ visitedOn, cents }) => [visitedOn, cents])).toEqual([
      ['2020-01-01', 0],
      ['2021-01-01', 0],
    ]);
  });

  it('leaves out takes that cannot be used, and counts them', () => {
    const { readings, leftOut } = records(
      [survey('s', 'v', 'centre strings')],
      [take('s', {}, false), take('s', { midi: 70 })],
    );
    expect(readings.map((reading) => reading.midi)).toEqual([70]);
    expect(leftOut.unusable).toBe(1);
  });

  it('keeps open unisons apart from centre strings, and a centre string played alone with them', () => {
    const { readings, leftOut } = records(
      [survey('c', 'v', 'centre strings'), survey('o', 'v', 'open unisons'), survey('a', 'v', 'single strings')],
      [
        take('c', { stringPosition: 2 }),
        take('o', { stringPosition: 2 }),
        take('a', { stringPosition: 2 }),
        take('a', { stringPosition: 3 }),
        take('a', { stringPosition: 0 }),
      ],
    );
    expect(readings.map((reading) => reading.stringPosition)).toEqual([0, 2, 2, 3]);
    expect(leftOut['string-unknown']).toBe(1);
  });

  it('carries date, stage and climate of the visit, and the uncertainty of the reading', () => {
    const [reading] = records([survey('s', 'v', 'centre strings', 'as-left')], [take('s', {})]).readings;
    expect(reading).toMatchObject({
      visitedOn: '2020-01-01',
      stage: 'as-left',
      humidityPct: 44,
      temperatureC: 20,
      standardUncertaintyCents: 0.04,
    });
  });
});
