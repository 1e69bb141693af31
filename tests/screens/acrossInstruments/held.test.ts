import { describe, expect, it } from 'vitest';
import type { InstrumentId } from '../../../src/piano/ids.ts';
import type { Instrument } from '../../../src/piano/instrument.ts';
import { createCourseCache } from '../../../src/screens/acrossInstruments/courseCache.ts';
import { NOTHING_YET, withNews } from '../../../src/screens/acrossInstruments/heldState.ts';
import { heldView, sharePoints } from '../../../src/screens/acrossInstruments/heldView.ts';
import { groupWords, spanRow, workWords } from '../../../src/screens/acrossInstruments/heldWords.ts';
import { type FoundJob, type LookBackNews, lookBack } from '../../../src/screens/acrossInstruments/lookBack.ts';
import { missingSteps } from '../../../src/screens/acrossInstruments/missingSteps.ts';
import type { StateOnDate } from '../../../src/stability/acrossInstruments/courseSince.ts';
import { texts } from '../../../src/ui/texts.ts';
import { exampleEvent, exampleInstrument, exampleVisit } from '../../records/exampleRecords.ts';

const words = texts.held.missing;

const COURSE: readonly StateOnDate[] = [
  { visitedOn: '2021-01-01', state: 'not enough evidence' },
  { visitedOn: '2022-01-01', state: 'holding' },
  { visitedOn: '2023-01-01', state: 'watch' },
];

function found(name: string, fields: Partial<Instrument> = {}, course = COURSE): FoundJob {
  const instrument = exampleInstrument({ id: name as InstrumentId, name, pinBlockKind: 'laminated', ...fields });
  const job = { doneOn: '2020-01-01', kinds: ['restrung'], range: null } as const;
  return { instrument, blockKind: instrument.pinBlockKind ?? null, job, course, laterWorkOn: [] };
}

describe('heldView', () => {
  const five = ['a', 'b', 'c', 'd', 'e'].map((name) => found(name));

  it('counts by the alarm that is chosen', () => {
    const [watch] = heldView(five, { alarm: 'watch', grouping: 'block', whose: 'own' }).groups;
    expect(watch?.curve?.steps.at(-1)?.share).toBe(0);
    const [bad] = heldView(five, { alarm: 'giving way', grouping: 'block', whose: 'own' }).groups;
    expect(bad?.curve?.steps.at(-1)?.share).toBe(1);
    expect(bad && sharePoints(bad).some(({ isLastSeen }) => isLastSeen)).toBe(true);
  });

  it('never counts invented instruments with real ones', () => {
    const mixed = [...five.slice(0, 4), found('e', { isDemonstration: true })];
    const own = heldView(mixed, { alarm: 'watch', grouping: 'block', whose: 'own' });
    expect(own.jobs).toHaveLength(4);
    expect(own.groups[0]?.curve).toBeNull();
    expect(heldView(mixed, { alarm: 'watch', grouping: 'block', whose: 'invented' }).jobs).toHaveLength(1);
  });

  it('sets aside what could not be judged', () => {
    const view = heldView([found('a', {}, COURSE.slice(0, 1))], { alarm: 'watch', grouping: 'work', whose: 'own' });
    expect(view).toMatchObject({ jobs: [], groups: [], unjudged: [{ visitCount: 1 }] });
  });

  it('has words for each job and each group', () => {
    const { jobs, groups } = heldView([found('The attic upright')], { alarm: 'watch', grouping: 'work', whose: 'own' });
    const [job] = jobs;
    expect(job && spanRow(job)).toMatchObject({
      name: 'The attic upright',
      end: 'watch',
      fromYears: expect.closeTo(1, 1),
    });
    expect(job && spanRow(job).detail).toBe('restrung · 3.0 years, watch since 1 January 2023');
    expect(groups.map(groupWords)).toEqual(['Restrung']);
    expect(workWords({ kinds: ['pin-replaced'], range: { fromMidi: 60, toMidi: 62 } })).toBe(
      'pins replaced on C4 to D4',
    );
  });
});

describe('what is missing', () => {
  const steps = (...jobs: FoundJob[]) =>
    missingSteps(heldView(jobs, { alarm: 'watch', grouping: 'block', whose: 'own' }), [
      exampleInstrument({ id: 'n' as InstrumentId, name: 'Without work', pinBlockKind: 'laminated' }),
    ]).map(({ instrument, sentence, route }) => [instrument.name, sentence, route.screen]);

  it('leads from each instrument to where that is entered', () => {
    expect(steps(found('Unjudged', {}, COURSE.slice(0, 1)), found('Judged'))).toEqual([
      ['Without work', words.work, 'instrument'],
      ['Unjudged', 'restrung on 1 January 2020, and only 1 visit with readings since then.', 'new-visit'],
    ]);
  });

  it('asks once for the kind of block, however much work was done on it', () => {
    const { pinBlockKind: _, ...instrument } = found('No kind').instrument;
    const one = { ...found('No kind'), instrument, blockKind: null };
    const other = { ...one, job: { ...one.job, doneOn: '2019-01-01' } };
    expect(steps(one, other).slice(1)).toEqual([['No kind', words.blockKind, 'edit-instrument']]);
  });
});

describe('lookBack', () => {
  const instrument = exampleInstrument({ name: 'With work' });
  const without = exampleInstrument({ name: 'Without' });
  const visit = exampleVisit(instrument);
  const tools = () => ({
    records: {
      listInstruments: async () => [instrument, without],
      eventsOf: async (id: InstrumentId) =>
        id === instrument.id ? [exampleEvent(instrument), exampleEvent(instrument, { happenedOn: '2022-06-01' })] : [],
      visitsOf: async () => [visit],
      surveysOfInstrument: async () => [],
      takesOfSurvey: async () => [],
    },
    courses: { courseOf: async () => COURSE },
    cache: createCourseCache(null),
    isStopped: () => false,
  });

  it('tells what it plans, what it does and what it finds', async () => {
    const told: LookBackNews[] = [];
    await lookBack(tools(), (news) => told.push(news));
    expect(told.map(({ kind }) => kind)).toEqual(['plan', 'reading', 'found', 'found', 'finished']);
    const state = told.reduce(withNews, NOTHING_YET);
    expect(state).toMatchObject({ phase: 'finished', jobCount: 2, withoutWork: [{ name: 'Without' }] });
    expect(state.found.map(({ job }) => job.doneOn)).toEqual(['2020-03-01', '2022-06-01']);
  });

  it('looks at each job until the next one on the same pins', async () => {
    const asked: (string | null)[] = [];
    const courseOf = async ({ untilOn }: { readonly untilOn: string | null }) => {
      asked.push(untilOn);
      return COURSE;
    };
    await lookBack({ ...tools(), courses: { courseOf } }, () => undefined);
    expect(asked).toEqual(['2022-06-01', null]);
  });

  it('says which instrument failed and goes on', async () => {
    const told: LookBackNews[] = [];
    const courseOf = () => Promise.reject(new Error('no convergence'));
    await lookBack({ ...tools(), courses: { courseOf } }, (news) => told.push(news));
    expect(told).toContainEqual({ kind: 'failed', name: 'With work', detail: 'no convergence' });
    expect(told.at(-1)?.kind).toBe('finished');
  });

  it('stops where it is told to', async () => {
    const told: LookBackNews[] = [];
    await lookBack({ ...tools(), isStopped: () => told.length >= 3 }, (news) => told.push(news));
    expect(told.map(({ kind }) => kind)).toEqual(['plan', 'reading', 'found']);
  });
});

describe('createCourseCache', () => {
  const request = {
    history: { readings: [], events: [], instrument: { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] } },
    job: { doneOn: '2020-01-01', range: null },
    untilOn: null,
    thresholdCentsPerYear: 1,
  };

  function storage() {
    const kept = new Map<string, string>();
    return {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => void kept.set(key, value),
    };
  }

  it('finds what another visit to the page kept, and nothing for another question', () => {
    const shelf = storage();
    createCourseCache(shelf).keep(request, COURSE);
    const cache = createCourseCache(shelf);
    expect(cache.find(request)).toEqual(COURSE);
    expect(cache.find({ ...request, thresholdCentsPerYear: 2 })).toBeUndefined();
    expect(cache.find({ ...request, untilOn: '2021-01-01' })).toBeUndefined();
    expect(
      cache.find({ ...request, job: { doneOn: '2020-01-01', range: { fromMidi: 60, toMidi: 61 } } }),
    ).toBeUndefined();
  });

  it('does not take over what another version of the program found', () => {
    const shelf = storage();
    createCourseCache(shelf).keep(request, COURSE);
    shelf.setItem(
      'stillpin-courses',
      (shelf.getItem('stillpin-courses') ?? '').replace(/"version":"[^"]*"/, '"version":"0.0.0"'),
    );
    expect(createCourseCache(shelf).find(request)).toBeUndefined();
  });
});
