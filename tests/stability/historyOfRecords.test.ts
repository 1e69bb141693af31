import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../src/piano/ids.ts';
import type { InstrumentEvent, Survey, Take, Visit } from '../../src/piano/instrument.ts';
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

describe('readings of one string with partials', () => {
  const B = 0.0004;
  /** f_n = n·f0·√(1 + B·n²), all moved by the same tension: n²·B·f0² stays as it is. */
  const partialsAt = (f0Hz: number, sigmaHz = 0.001, numbers = [1, 2, 3, 4, 5, 6]) =>
    numbers.map((n): [number, number, number] => {
      const stiff = B * 440 ** 2 * n ** 4;
      return [n, Math.sqrt(n ** 2 * f0Hz ** 2 + stiff), sigmaHz];
    });
  const years = [visit('v', '2020-01-01'), visit('w', '2021-01-01'), visit('x', '2022-01-01')];
  const surveys = [
    survey('s', 'v', 'centre strings', 'as-left'),
    survey('t', 'w', 'centre strings'),
    survey('u', 'x', 'centre strings'),
  ];
  const centsOf = (takes: Take[], events: InstrumentEvent[] = []) =>
    historyOfRecords({ instrument, visits: years, surveys, takes, events }).readings.map(({ cents }) => cents);

  it('differ by what most of their partials moved, though partial 1 was read wrongly', () => {
    const flatter = partialsAt(440 * 2 ** (-4 / 1200));
    const wrong = flatter.map(([n, hz, sigma]): [number, number, number] => [n, n === 1 ? hz * 1.002 : hz, sigma]);
    const [before, after] = centsOf([
      take('s', { partials: partialsAt(440), inharmonicityB: B }),
      take('t', { partials: wrong, inharmonicityB: B }),
    ]);
    // Partial 1 alone would say half a cent flat; by partials 2 to 6 it is four.
    expect(after! - before!).toBeCloseTo(-4, 1);
  });

  it('stand as their partial 1 does where they have no two partials in common', () => {
    const [before, after] = centsOf([
      take('s', { partials: partialsAt(440, 0.001, [1, 2, 3]), inharmonicityB: B }),
      take('t', { partials: partialsAt(441, 0.001, [1, 5, 6]), inharmonicityB: B }),
    ]);
    expect(after! - before!).toBeCloseTo(1200 * Math.log2(partialsAt(441)[0]![1] / partialsAt(440)[0]![1]), 9);
  });

  it('stand on another scale from new wire on, for its partials lie otherwise', () => {
    const stiffer = partialsAt(440).map(([n, hz]): [number, number, number] => [n, hz * (1 + 0.0005 * (n - 1)), 0.001]);
    const takes = [
      take('s', { partials: partialsAt(440), inharmonicityB: B }),
      take('t', { partials: stiffer, inharmonicityB: B }),
    ];
    const restrung: InstrumentEvent = {
      id: 'e' as InstrumentEvent['id'],
      instrumentId,
      happenedOn: '2020-06-01',
      kind: 'string-replaced',
      fromMidi: 69,
      toMidi: 69,
      remark: '',
    };
    const [before, after] = centsOf(takes, [restrung]);
    expect(after).toBeCloseTo(before!, 9);
    const [, taken] = centsOf(takes);
    expect(Math.abs(taken! - before!)).toBeGreaterThan(1);
  });
});
