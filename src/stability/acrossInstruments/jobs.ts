/** Work on block, pins or wire that an instrument's holding is counted from. */
import type { InstrumentEvent } from '../../piano/instrument.ts';
import { yearsBetween } from '../changeIntervals.ts';

export const WORK_KINDS = ['block-work', 'restrung', 'pin-replaced'] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

export type Job = {
  /** Of its last part. */
  readonly doneOn: string;
  /** Everything that was done, each once, in the order of WORK_KINDS. */
  readonly kinds: readonly WorkKind[];
  /** Null: the whole instrument. */
  readonly range: { readonly fromMidi: number; readonly toMidi: number } | null;
};

/** Parts further apart are two jobs, even where nobody came to listen between them. Chosen. */
const LONGEST_JOB_YEARS = 1;

/**
 * A new block in April and new wire in June are one job: work counts as one where no visit lies between its parts and they are not
 * more than a year apart. Work on some notes and work on the whole instrument stay two.
 * @param visitDates ISO 8601 calendar dates
 */
export function jobsOf(events: readonly InstrumentEvent[], visitDates: readonly string[]): Job[] {
  const jobs: Job[] = [];
  for (const event of [...events].sort((a, b) => (a.happenedOn < b.happenedOn ? -1 : 1))) {
    const kind = WORK_KINDS.find((work) => work === event.kind);
    if (!kind) continue;
    const part = { doneOn: event.happenedOn, kinds: [kind], range: rangeOf(event) };
    const before = jobs.findLastIndex((job) => isSameRange(job, part));
    const former = jobs[before];
    if (former && belongs(former, part, visitDates)) jobs[before] = joined(former, part);
    else jobs.push(part);
  }
  return jobs.sort((a, b) => (a.doneOn < b.doneOn ? -1 : 1));
}

function rangeOf({ fromMidi, toMidi }: InstrumentEvent): Job['range'] {
  return fromMidi === null || toMidi === null ? null : { fromMidi, toMidi };
}

function isSameRange({ range: a }: Job, { range: b }: Job): boolean {
  return a?.fromMidi === b?.fromMidi && a?.toMidi === b?.toMidi;
}

function belongs(former: Job, part: Job, visitDates: readonly string[]): boolean {
  if (yearsBetween(former.doneOn, part.doneOn) > LONGEST_JOB_YEARS) return false;
  return !visitDates.some((date) => date > former.doneOn && date < part.doneOn);
}

function joined(former: Job, part: Job): Job {
  const kinds = WORK_KINDS.filter((kind) => former.kinds.includes(kind) || part.kinds.includes(kind));
  return { doneOn: part.doneOn, kinds, range: part.range };
}

/** Whether later work does away with what an earlier job did. */
export function replaces(later: Job, earlier: Job): boolean {
  if (later.range === null) return true;
  if (earlier.range === null) return false;
  return later.range.fromMidi <= earlier.range.fromMidi && later.range.toMidi >= earlier.range.toMidi;
}
