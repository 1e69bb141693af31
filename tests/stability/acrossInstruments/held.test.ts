import { describe, expect, it } from 'vitest';
import type { EventId, InstrumentId } from '../../../src/piano/ids.ts';
import type { EventKind, InstrumentEvent } from '../../../src/piano/instrument.ts';
import { type StateOnDate, stateWithin } from '../../../src/stability/acrossInstruments/courseSince.ts';
import {
  blockKindAt,
  FEWEST_INSTRUMENTS,
  type HeldJob,
  heldGroups,
} from '../../../src/stability/acrossInstruments/heldGroups.ts';
import { type HeldSpan, heldSpan } from '../../../src/stability/acrossInstruments/heldSpan.ts';
import { type Job, jobsOf, replaces } from '../../../src/stability/acrossInstruments/jobs.ts';
import { analyseDrift, type Drift } from '../../../src/stability/drift/analyseDrift.ts';

function event(happenedOn: string, kind: EventKind, range: readonly [number, number] | null = null): InstrumentEvent {
  return {
    id: happenedOn as EventId,
    instrumentId: 'i' as InstrumentId,
    happenedOn,
    kind,
    fromMidi: range?.[0] ?? null,
    toMidi: range?.[1] ?? null,
    remark: '',
  };
}

const job = (doneOn: string, fields: Partial<Job> = {}): Job => ({
  doneOn,
  kinds: ['restrung'],
  range: null,
  ...fields,
});

describe('jobsOf', () => {
  it('takes a new block and the wire that follows as one job, dated by its last part', () => {
    const events = [event('2014-06-10', 'restrung'), event('2014-04-22', 'block-work')];
    expect(jobsOf(events, ['2016-08-18'])).toEqual([job('2014-06-10', { kinds: ['block-work', 'restrung'] })]);
  });

  it('keeps them apart where a visit lies between them, or more than a year', () => {
    const events = [event('2014-04-22', 'block-work'), event('2014-06-10', 'restrung')];
    expect(jobsOf(events, ['2014-05-01'])).toHaveLength(2);
    expect(jobsOf([event('2014-04-22', 'block-work'), event('2018-06-10', 'restrung')], [])).toHaveLength(2);
  });

  it('leaves out what no block is judged by, and keeps work on some notes apart from work on all', () => {
    const events = [
      event('2014-04-22', 'moved'),
      event('2014-05-01', 'pin-replaced', [60, 62]),
      event('2014-06-10', 'restrung'),
    ];
    expect(jobsOf(events, []).map(({ range }) => range)).toEqual([{ fromMidi: 60, toMidi: 62 }, null]);
  });
});

it('replaces: work on the whole does away with all that was before, work on a few notes with that on them only', () => {
  const [whole, some, fewer] = [
    job('2020-01-01'),
    job('2020-01-01', { range: { fromMidi: 60, toMidi: 71 } }),
    job('2020-01-01', { range: { fromMidi: 62, toMidi: 64 } }),
  ];
  expect([replaces(whole, some), replaces(some, fewer)]).toEqual([true, true]);
  expect([replaces(some, whole), replaces(fewer, some)]).toEqual([false, false]);
});

describe('heldSpan', () => {
  const course = (...states: readonly (readonly [string, StateOnDate['state']])[]): StateOnDate[] =>
    states.map(([visitedOn, state]) => ({ visitedOn, state }));

  it('counts from the visit before the first verdict to the last one while it holds', () => {
    const held = heldSpan(
      job('2015-01-01'),
      course(
        ['2017-01-01', 'not enough evidence'],
        ['2018-01-01', 'not enough evidence'],
        ['2019-01-01', 'holding'],
        ['2021-01-01', 'holding'],
      ),
      'watch',
    );
    expect(held).toMatchObject({
      isJudged: true,
      held: { fromOn: '2018-01-01', toOn: '2021-01-01', endState: 'holding' },
    });
    if (!held.isJudged) throw new Error('it should be judged');
    expect(held.held.span.entryYears).toBeCloseTo(3, 1);
    expect(held.held.span.exitYears).toBeCloseTo(6, 1);
    expect(held.held.span.hasEnded).toBe(false);
  });

  const failing = course(
    ['2018-01-01', 'not enough evidence'],
    ['2019-01-01', 'holding'],
    ['2020-01-01', 'watch'],
    ['2021-01-01', 'giving way'],
    ['2022-01-01', 'giving way'],
  );

  it('ends at the first doubtful verdict, or at the first bad one where only that counts', () => {
    expect(heldSpan(job('2015-01-01'), failing, 'watch')).toMatchObject({
      held: { toOn: '2020-01-01', endState: 'watch', span: { hasEnded: true } },
    });
    expect(heldSpan(job('2015-01-01'), failing, 'giving way')).toMatchObject({
      held: { toOn: '2021-01-01', endState: 'giving way', span: { hasEnded: true } },
    });
  });

  it('does not count an alarm that the last verdict takes back, unless work may have mended it', () => {
    const falseAlarm = [...failing.slice(0, 3), ...course(['2022-01-01', 'holding'])];
    expect(heldSpan(job('2015-01-01'), falseAlarm, 'watch')).toMatchObject({
      held: { toOn: '2022-01-01', endState: 'holding', takenBackOn: '2020-01-01', span: { hasEnded: false } },
    });
    expect(heldSpan(job('2015-01-01'), falseAlarm, 'watch', ['2020-06-01'])).toMatchObject({
      held: { toOn: '2020-01-01', endState: 'watch', takenBackOn: null, span: { hasEnded: true } },
    });
  });

  it('does not count the years after the last verdict as held', () => {
    const held = heldSpan(
      job('2015-01-01'),
      course(['2018-01-01', 'not enough evidence'], ['2019-01-01', 'holding'], ['2024-01-01', 'not enough evidence']),
      'watch',
    );
    expect(held).toMatchObject({ held: { toOn: '2019-01-01', span: { hasEnded: false } } });
  });

  it('says so where nothing could be judged yet', () => {
    expect(heldSpan(job('2015-01-01'), course(['2018-01-01', 'not enough evidence']), 'watch')).toMatchObject({
      isJudged: false,
      visitCount: 1,
    });
    expect(heldSpan(job('2015-01-01'), [], 'watch')).toMatchObject({ isJudged: false, visitCount: 0 });
  });
});

describe('heldGroups', () => {
  const heldJob = (name: string, years: number, hasEnded: boolean, fields: Partial<HeldJob> = {}): HeldJob => ({
    instrument: { id: name as InstrumentId, name, isDemonstration: false },
    blockKind: 'laminated',
    held: { job: job('2010-01-01'), span: { entryYears: 0, exitYears: years, hasEnded } } as HeldSpan,
    ...fields,
  });
  const five = [heldJob('a', 2, true), ...['b', 'c', 'd', 'e'].map((name) => heldJob(name, 8, false))];

  it('claims a rate from five instruments on', () => {
    const [group] = heldGroups(five, 'block');
    expect(group).toMatchObject({ key: 'laminated', instrumentCount: FEWEST_INSTRUMENTS });
    expect(group?.curve?.steps.find(({ years }) => years === 2)?.share).toBeCloseTo(0.8, 12);
    expect(heldGroups(five.slice(1), 'block')[0]?.curve).toBeNull();
  });

  it('counts instruments, not jobs', () => {
    const again = [...five.slice(0, 4), heldJob('d', 3, false)];
    expect(heldGroups(again, 'block')[0]).toMatchObject({ instrumentCount: 4, curve: null });
  });

  it('claims nothing of blocks that nobody named', () => {
    expect(
      heldGroups(
        five.map((one) => ({ ...one, blockKind: null })),
        'block',
      )[0],
    ).toMatchObject({ key: '', curve: null });
  });

  it('groups by what was done as well', () => {
    const other = heldJob('f', 3, false, {
      held: { ...five[1]?.held, job: job('2011-01-01', { kinds: ['block-work', 'restrung'] }) } as HeldSpan,
    });
    expect(heldGroups([...five, other], 'work').map(({ key, instrumentCount }) => [key, instrumentCount])).toEqual([
      ['restrung', 5],
      ['block-work+restrung', 1],
    ]);
  });
});

it('blockKindAt: today’s kind of block says nothing of work before the block was changed', () => {
  const jobs = [job('2000-01-01'), job('2010-01-01', { kinds: ['block-work'] }), job('2020-01-01')];
  const kinds = jobs.map((one) => blockKindAt({ pinBlockKind: 'solid planks' }, one, jobs));
  expect(kinds).toEqual([null, 'solid planks', 'solid planks']);
  expect(blockKindAt({}, jobs[2] as Job, jobs)).toBeNull();
});

describe('stateWithin', () => {
  const empty = analyseDrift({
    readings: [],
    events: [],
    instrument: { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] },
    thresholdCentsPerYear: 1,
    random: () => 0,
  });
  const slip = { centsPerYear: -3, standardUncertainty: 0.3, probability: 0.99 };
  const drift: Drift = {
    ...empty,
    verdict: { ...empty.verdict, state: 'giving way' },
    pins: [{ midi: 80, stringPosition: 2, slip, isFlagged: true }],
  };

  it('asks only what was found among the notes that were worked on', () => {
    expect(stateWithin(drift, null, 1)).toBe('giving way');
    expect(stateWithin(drift, { fromMidi: 78, toMidi: 82 }, 1)).toBe('giving way');
    expect(stateWithin(drift, { fromMidi: 78, toMidi: 82 }, 4)).toBe('watch');
    expect(stateWithin(drift, { fromMidi: 40, toMidi: 50 }, 1)).toBe('holding');
    expect(stateWithin(empty, { fromMidi: 40, toMidi: 50 }, 1)).toBe('not enough evidence');
  });
});
