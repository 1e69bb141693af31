import { describe, expect, it } from 'vitest';
import type { EventId, InstrumentId, SurveyId, VisitId } from '../../src/piano/ids.ts';
import type { EventKind, InstrumentEvent, Survey, SurveyStage, Visit } from '../../src/piano/instrument.ts';
import type { SurveyScope } from '../../src/piano/surveyScope.ts';
import { intervalsOf, yearsBetween } from '../../src/stability/changeIntervals.ts';

const instrumentId = 'i' as InstrumentId;

function visit(visitedOn: string, fields: Partial<Visit> = {}): Visit {
  return {
    id: visitedOn as VisitId,
    instrumentId,
    visitedOn,
    visitedBy: '',
    humidityPct: null,
    temperatureC: null,
    pitchStandardHz: 440,
    remark: '',
    ...fields,
  };
}

function survey(visitedOn: string, stage: SurveyStage, suffix = ''): Survey {
  return {
    id: `${visitedOn} ${stage}${suffix}` as SurveyId,
    visitId: visitedOn as VisitId,
    instrumentId,
    stage,
    startedAt: `${visitedOn}T10:00:00Z`,
    finishedAt: null,
    deviceLabel: '',
    sampleRateHz: null,
    strings: 'centre strings',
  };
}

function event(
  happenedOn: string,
  kind: EventKind,
  fromMidi: number | null = null,
  toMidi = fromMidi,
): InstrumentEvent {
  return { id: happenedOn as EventId, instrumentId, happenedOn, kind, fromMidi, toMidi, remark: '' };
}

const both = (date: string): Survey[] => [survey(date, 'as-found'), survey(date, 'as-left')];

describe('intervalsOf', () => {
  const [first, second, third] = ['2019-03-02', '2019-10-11', '2020-04-01'] as const;

  it('pairs each as-left survey with the next as-found one, with time and climate between', () => {
    const visits = [
      visit(second, { humidityPct: 54, temperatureC: 20 }),
      visit(first, { humidityPct: 40, temperatureC: 22 }),
    ];
    const intervals = intervalsOf(visits, [...both(first), ...both(second)]);
    expect(intervals).toHaveLength(1);
    expect(intervals[0]).toMatchObject({
      from: { visitedOn: first },
      to: { visitedOn: second },
      humidityChangePct: 14,
      temperatureChangeC: -2,
      baseline: { known: true, stage: 'as-left', surveyIds: [`${first} as-left`] },
      asFoundSurveyIds: [`${second} as-found`],
      startedAnew: [],
    });
    // 29 days of March, 30 + 31 + 30 + 31 + 31 + 30 of April to September, 11 − 0 of October: 223 days, 223/365.25 = 0.6105.
    expect(intervals[0]?.years).toBeCloseTo(0.6105, 4);
  });

  it('starts from the as-found survey of a visit that was not tuned', () => {
    const surveys = [...both(first), survey(second, 'as-found'), survey(third, 'as-found')];
    const baselines = intervalsOf([visit(first), visit(second), visit(third)], surveys).map(({ baseline }) => baseline);
    expect(baselines).toEqual([
      { known: true, stage: 'as-left', surveyIds: [`${first} as-left`] },
      { known: true, stage: 'as-found', surveyIds: [`${second} as-found`] },
    ]);
  });

  it('has no baseline where a tuned event bears the date of a visit with only as-found surveys', () => {
    const surveys = [...both(first), survey(second, 'as-found'), survey(third, 'as-found')];
    const visits = [visit(first), visit(second), visit(third)];
    const known = intervalsOf(visits, surveys, [event(second, 'tuned')]).map(({ baseline }) => baseline.known);
    expect(known).toEqual([true, false]);
  });

  it('does not mind a tuned event on the day of an as-left survey, nor on the day of the as-found survey compared', () => {
    const events = [event(first, 'tuned'), event(second, 'tuned')];
    const [interval] = intervalsOf([visit(first), visit(second)], [...both(first), ...both(second)], events);
    expect(interval?.baseline.known).toBe(true);
    expect(interval?.startedAnew).toEqual([]);
  });

  it('loses the baseline to a tuning between two visits, and single notes to a replaced string', () => {
    const visits = [visit(first), visit(second)];
    const surveys = [...both(first), ...both(second)];
    expect(intervalsOf(visits, surveys, [event('2019-06-01', 'tuned')])[0]?.baseline.known).toBe(false);
    const [interval] = intervalsOf(visits, surveys, [event('2019-06-01', 'string-replaced', 60)]);
    expect(interval?.baseline.known).toBe(true);
    expect(interval?.startedAnew).toEqual([{ fromMidi: 60, toMidi: 60 }]);
  });

  it('does not let a move or work on the block take the baseline away', () => {
    const events = [event('2019-06-01', 'moved'), event('2019-06-02', 'block-work')];
    const [interval] = intervalsOf([visit(first), visit(second)], [...both(first), ...both(second)], events);
    expect(interval).toMatchObject({ baseline: { known: true }, startedAnew: [] });
  });

  it('ends no interval at a visit without an as-found survey, and starts the next from its as-left one', () => {
    const surveys = [...both(first), survey(second, 'as-left'), survey(third, 'as-found')];
    const intervals = intervalsOf([visit(first), visit(second), visit(third)], surveys);
    expect(intervals.map(({ from, to }) => [from.visitedOn, to.visitedOn])).toEqual([[second, third]]);
  });

  it('reaches over a visit where nothing was surveyed', () => {
    const intervals = intervalsOf([visit(first), visit(second), visit(third)], [...both(first), ...both(third)]);
    expect(intervals.map(({ from, to }) => [from.visitedOn, to.visitedOn])).toEqual([[first, third]]);
  });

  it('takes all surveys of a stage together', () => {
    const surveys = [survey(first, 'as-left', ' 1'), survey(first, 'as-left', ' 3'), survey(second, 'as-found')];
    const [interval] = intervalsOf([visit(first), visit(second)], surveys);
    expect(interval?.baseline).toMatchObject({ surveyIds: [`${first} as-left 1`, `${first} as-left 3`] });
  });

  it('gives nothing for one visit, or none', () => {
    expect(intervalsOf([], [])).toEqual([]);
    expect(intervalsOf([visit(first)], both(first))).toEqual([]);
  });
});

describe('what strings are compared with that the newest survey did not read', () => {
  const [first, second, third] = ['2019-03-02', '2019-10-11', '2020-04-01'] as const;
  const visits = [visit(first, { humidityPct: 40 }), visit(second), visit(third, { humidityPct: 45 })];
  const left = (date: string, scope: SurveyScope): Survey => ({ ...survey(date, 'as-left'), scope });
  const last = (surveys: Survey[], events: InstrumentEvent[] = []) =>
    intervalsOf(visits, [...both(first), ...surveys, survey(third, 'as-found')], events).at(-1);
  const section: SurveyScope = { kind: 'section', fromMidi: 96, toMidi: 105 };
  const sample: SurveyScope = { kind: 'sample', notesMidi: [33, 45, 57] };
  const states = (interval: ReturnType<typeof last>) =>
    interval?.earlier.map(({ from, stage }) => `${from.visitedOn} ${stage}`);

  it('is the as-left survey before, where the newest is an as-found one of a few notes', () => {
    const interval = last([{ ...survey(second, 'as-found'), scope: sample }]);
    expect(interval?.baseline).toMatchObject({ known: true, stage: 'as-found' });
    expect(states(interval)).toEqual([`${first} as-left`]);
    expect(interval?.earlier[0]).toMatchObject({ surveyIds: [`${first} as-left`], humidityChangePct: 5 });
    // From 2 March 2019 to 1 April 2020 with its leap day: 396 days, 396/365.25 = 1.0842.
    expect(interval?.earlier[0]?.years).toBeCloseTo(1.0842, 4);
  });

  it('is the same visit as found, where only a section was left anew', () => {
    const interval = last([survey(second, 'as-found'), left(second, section)]);
    expect(states(interval)).toEqual([`${second} as-found`, `${first} as-left`]);
    for (const { startedAnew } of interval?.earlier ?? []) expect(startedAnew).toEqual([{ fromMidi: 96, toMidi: 105 }]);
    expect(interval?.startedAnew).toEqual([]);
  });

  it('is nothing after an as-left survey of the whole, or of a sample, which stands for the whole', () => {
    expect(states(last(both(second)))).toEqual([]);
    expect(states(last([survey(second, 'as-found'), left(second, sample)]))).toEqual([]);
  });

  it('follows a tuned event of that day rather than the survey', () => {
    const sampled = [survey(second, 'as-found'), left(second, sample)];
    const interval = last(sampled, [event(second, 'tuned', 60, 72)]);
    expect(states(interval)).toEqual([`${second} as-found`, `${first} as-left`]);
    expect(interval?.earlier[0]?.startedAnew).toEqual([{ fromMidi: 60, toMidi: 72 }]);
    const cut = last([survey(second, 'as-found'), left(second, section)], [event(second, 'tuned')]);
    expect(cut?.baseline.known).toBe(true);
    expect(states(cut)).toEqual([]);
  });

  it('is nothing older than a tuning that nobody surveyed', () => {
    const partial = [{ ...survey(second, 'as-found'), scope: sample }];
    expect(states(last(partial, [event('2019-06-01', 'tuned')]))).toEqual([]);
    expect(last(partial, [event('2020-01-01', 'tuned')])).toMatchObject({ baseline: { known: false }, earlier: [] });
  });
});

describe('yearsBetween', () => {
  it('counts whole days, leap days too', () => {
    expect(yearsBetween('2020-02-28', '2020-03-01') * 365.25).toBeCloseTo(2, 9);
    expect(yearsBetween('2019-02-28', '2019-03-01') * 365.25).toBeCloseTo(1, 9);
  });

  it.each(['2019-3-2', '2.3.2019', '', '2019-13-01'])('refuses %j', (date) => {
    expect(() => yearsBetween(date, '2020-01-01')).toThrow(/ISO 8601/);
  });
});
