import { describe, expect, it } from 'vitest';
import type { SurveyId, VisitId } from '../../src/piano/ids.ts';
import type { InstrumentEvent, Survey, Take, Visit } from '../../src/piano/instrument.ts';
import type { BeatingKind } from '../../src/piano/reading.ts';
import type { StringDecision } from '../../src/piano/stringingRecords.ts';
import { falseBeatsOf } from '../../src/report/falseBeats.ts';
import { exampleInstrument, exampleReading } from '../records/exampleRecords.ts';

const instrument = exampleInstrument();

/** One survey a day: the kinds of beating from C5 up. */
function records(
  days: Readonly<Record<string, readonly BeatingKind[]>>,
  strings: Survey['strings'] = 'single strings',
) {
  const dates = Object.keys(days);
  const visits = dates.map((visitedOn) => ({ id: visitedOn as VisitId, visitedOn }) as Visit);
  const surveys = dates.map(
    (date) => ({ id: date as SurveyId, visitId: date as VisitId, strings, startedAt: date }) as Survey,
  );
  const takes = dates.flatMap((date) =>
    (days[date] ?? []).map((kind, index): Take => {
      const beating = { kind, rateHz: null, depthDb: null, partialNumbers: [], reason: '' };
      const reading = exampleReading({ midi: 72 + index, stringPosition: 1, beating });
      return {
        id: `${date}${index}` as Take['id'],
        surveyId: date as SurveyId,
        visitId: date as VisitId,
        instrumentId: instrument.id,
        midi: 72 + index,
        stringPosition: 1,
        recordedAt: date,
        isKept: true,
        reading,
      };
    }),
  );
  return { visits, surveys, takes, events: [] as InstrumentEvent[], decisions: [] as StringDecision[] };
}

const event = (happenedOn: string, fromMidi: number | null, toMidi: number | null): InstrumentEvent => ({
  id: happenedOn as InstrumentEvent['id'],
  instrumentId: instrument.id,
  happenedOn,
  kind: 'string-replaced',
  fromMidi,
  toMidi,
  remark: '',
});

const BEFORE: readonly BeatingKind[] = ['false beat', 'false beat', 'none', 'undetermined'];
const AFTER: readonly BeatingKind[] = ['none', 'false beat', 'none', 'false beat'];

describe('falseBeatsOf', () => {
  it('counts the strings that were worked on, judged on both sides, before and after', () => {
    const own = records({ '2020-01-01': BEFORE, '2020-03-01': AFTER });
    const { work } = falseBeatsOf({ ...own, events: [event('2020-02-01', null, null)] });
    expect(work?.before).toEqual({ on: '2020-01-01', withFalseBeat: 2, judged: 3 });
    expect(work?.after).toEqual({ on: '2020-03-01', withFalseBeat: 1, judged: 3 });
  });

  it('leaves out strings that the work did not touch', () => {
    const own = records({ '2020-01-01': BEFORE, '2020-03-01': AFTER });
    const { work } = falseBeatsOf({ ...own, events: [event('2020-02-01', 72, 72)] });
    expect(work).toMatchObject({ before: { withFalseBeat: 1, judged: 1 }, after: { withFalseBeat: 0, judged: 1 } });
  });

  it('takes a decision that was carried out for work on its string, and one that was not for none', () => {
    const own = records({ '2020-01-01': BEFORE, '2020-03-01': AFTER });
    const decision = (doneOn: string | null): StringDecision => ({
      id: 'd' as StringDecision['id'],
      instrumentId: instrument.id,
      midi: 73,
      stringPosition: 0,
      choice: 'bridge work',
      reason: '',
      decidedOn: '2020-01-02',
      doneOn,
    });
    expect(falseBeatsOf({ ...own, decisions: [decision('2020-02-01')] }).work).toMatchObject({
      before: { withFalseBeat: 1, judged: 1 },
      after: { withFalseBeat: 1, judged: 1 },
    });
    expect(falseBeatsOf({ ...own, decisions: [decision(null)] }).work).toBeNull();
  });

  it('takes the latest work on wire, not a later one on pins', () => {
    const own = records({ '2020-01-01': BEFORE, '2020-03-01': AFTER, '2020-05-01': BEFORE });
    const pins = { ...event('2020-04-01', null, null), kind: 'pin-replaced' as const };
    expect(falseBeatsOf({ ...own, events: [event('2020-02-01', null, null), pins] }).work?.doneOn).toBe('2020-02-01');
  });

  it('has nothing to compare where no string was read on both sides', () => {
    const own = records({ '2020-03-01': AFTER });
    expect(falseBeatsOf({ ...own, events: [event('2020-02-01', null, null)] }).work).toBeNull();
  });

  it('says of each string what its newest reading shows, and how many cannot be judged', () => {
    const { latest } = falseBeatsOf(records({ '2020-01-01': AFTER, '2021-01-01': BEFORE }));
    expect(latest).toMatchObject({ on: '2021-01-01', withFalseBeat: 2, judged: 3, notAssessable: 1 });
    expect(latest?.strings.map(({ midi }) => midi)).toEqual([72, 73]);
  });

  it('counts no open unisons: their strings beat with each other', () => {
    expect(falseBeatsOf(records({ '2020-01-01': BEFORE }, 'open unisons')).latest).toBeNull();
  });
});
