/** Goes through all instruments and finds out, job by job, how their blocks stood at each visit since. */
import type { Instrument, InstrumentEvent, PinBlockKind } from '../../piano/instrument.ts';
import type { CourseRequest, StateOnDate } from '../../stability/acrossInstruments/courseSince.ts';
import { blockKindAt } from '../../stability/acrossInstruments/heldGroups.ts';
import { type Job, jobsOf, replaces } from '../../stability/acrossInstruments/jobs.ts';
import type { CourseDesk } from '../../workers/openCourses.ts';
import { type HistorySource, readHistoryToJudge } from '../../workers/readHistoryToJudge.ts';
import type { CourseCache } from './courseCache.ts';

export type FoundJob = {
  readonly instrument: Instrument;
  readonly blockKind: PinBlockKind | null;
  readonly job: Job;
  readonly course: readonly StateOnDate[];
  /** Dates of all later work on the instrument. */
  readonly laterWorkOn: readonly string[];
};

export type LookBackNews =
  | { readonly kind: 'plan'; readonly jobCount: number; readonly withoutWork: readonly Instrument[] }
  | { readonly kind: 'reading'; readonly name: string }
  | { readonly kind: 'visit'; readonly name: string; readonly doneCount: number; readonly allCount: number }
  | { readonly kind: 'found'; readonly found: FoundJob }
  | { readonly kind: 'failed'; readonly name: string; readonly detail: string }
  | { readonly kind: 'finished' };

export type LookBackTools = {
  readonly records: HistorySource & { listInstruments(): Promise<Instrument[]> };
  readonly courses: Pick<CourseDesk, 'courseOf'>;
  readonly cache: CourseCache;
  /** Asked before each step: true once nobody wants to know any more. */
  readonly isStopped: () => boolean;
};

type Planned = { readonly instrument: Instrument; readonly jobs: readonly Job[] };

export async function lookBack(tools: LookBackTools, tell: (news: LookBackNews) => void): Promise<void> {
  const planned = await Promise.all((await tools.records.listInstruments()).map((one) => plan(tools, one)));
  const withWork = planned.filter(({ jobs }) => jobs.length > 0);
  const withoutWork = planned.filter(({ jobs }) => jobs.length === 0).map(({ instrument }) => instrument);
  const jobCount = withWork.reduce((sum, { jobs }) => sum + jobs.length, 0);
  if (tools.isStopped()) return;
  tell({ kind: 'plan', jobCount, withoutWork });
  for (const one of withWork) {
    if (tools.isStopped()) return;
    await lookBackOn(one, tools, tell);
  }
  if (!tools.isStopped()) tell({ kind: 'finished' });
}

async function plan({ records }: LookBackTools, instrument: Instrument): Promise<Planned> {
  const [events, visits]: [InstrumentEvent[], { readonly visitedOn: string }[]] = await Promise.all([
    records.eventsOf(instrument.id),
    records.visitsOf(instrument.id),
  ]);
  const dates = visits.map(({ visitedOn }) => visitedOn);
  return { instrument, jobs: jobsOf(events, dates) };
}

/** One instrument that cannot be judged does not keep the others from it. */
async function lookBackOn({ instrument, jobs }: Planned, tools: LookBackTools, tell: (news: LookBackNews) => void) {
  const { name } = instrument;
  try {
    tell({ kind: 'reading', name });
    const { thresholdCentsPerYear, ...history } = await readHistoryToJudge(tools.records, instrument);
    for (const job of jobs) {
      if (tools.isStopped()) return;
      const untilOn = jobs.find((later) => later.doneOn > job.doneOn && replaces(later, job))?.doneOn ?? null;
      const request = { history, job: { doneOn: job.doneOn, range: job.range }, untilOn, thresholdCentsPerYear };
      const course = await courseOf(request, tools, (doneCount, allCount) =>
        tell({ kind: 'visit', name, doneCount, allCount }),
      );
      if (tools.isStopped()) return;
      const laterWorkOn = jobs.map(({ doneOn }) => doneOn).filter((date) => date > job.doneOn);
      const blockKind = blockKindAt(instrument, job, jobs);
      tell({ kind: 'found', found: { instrument, blockKind, job, course, laterWorkOn } });
    }
  } catch (error) {
    if (tools.isStopped()) return;
    tell({ kind: 'failed', name, detail: error instanceof Error ? error.message : String(error) });
  }
}

async function courseOf(
  request: CourseRequest,
  { cache, courses }: LookBackTools,
  onVisit: (doneCount: number, allCount: number) => void,
): Promise<readonly StateOnDate[]> {
  const known = cache.find(request);
  if (known) return known;
  const course = await courses.courseOf(request, onVisit);
  cache.keep(request, course);
  return course;
}
