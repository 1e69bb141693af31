/** Courses that were worked out before, kept on this device: the same history and the same program give the same course. */
import type { CourseRequest, StateOnDate } from '../../stability/acrossInstruments/courseSince.ts';
import { PROGRAM_VERSION } from '../../ui/programVersion.ts';
import { stateOf } from '../../workers/judgedDrift.ts';

type Course = readonly StateOnDate[];
type Stored = { readonly version: string; readonly courses: Readonly<Record<string, Course>> };

const STORAGE_KEY = 'stillpin-courses';
/** About a kilobyte each. */
const MOST_KEPT = 300;

export type CourseCache = {
  readonly find: (request: CourseRequest) => Course | undefined;
  readonly keep: (request: CourseRequest, course: Course) => void;
};

/** @param storage null where the browser keeps nothing for this page; then courses last as long as the cache */
export function createCourseCache(storage: Pick<Storage, 'getItem' | 'setItem'> | null): CourseCache {
  let courses = readStored(storage);
  return {
    find: (request) => courses[keyOf(request)],
    keep: (request, course) => {
      const { [keyOf(request)]: _before, ...others } = courses;
      const kept = Object.entries(others).slice(-(MOST_KEPT - 1));
      courses = { ...Object.fromEntries(kept), [keyOf(request)]: course };
      write(storage, { version: PROGRAM_VERSION, courses });
    },
  };
}

function keyOf({ history, job, untilOn, thresholdCentsPerYear }: CourseRequest): string {
  const range = job.range ? `${job.range.fromMidi}-${job.range.toMidi}` : 'all';
  return `${stateOf({ ...history, thresholdCentsPerYear })} ${job.doneOn} ${range} ${untilOn ?? ''}`;
}

/** What another version of the program found is not taken over: its judgement may differ. */
function readStored(storage: Pick<Storage, 'getItem'> | null): Stored['courses'] {
  try {
    const stored: unknown = JSON.parse(storage?.getItem(STORAGE_KEY) ?? 'null');
    return isStored(stored) && stored.version === PROGRAM_VERSION ? stored.courses : {};
  } catch (error) {
    console.info('What was judged before cannot be read and is judged again.', error);
    return {};
  }
}

function isStored(value: unknown): value is Stored {
  return typeof value === 'object' && value !== null && 'version' in value && 'courses' in value;
}

function write(storage: Pick<Storage, 'setItem'> | null, stored: Stored): void {
  try {
    storage?.setItem(STORAGE_KEY, JSON.stringify(stored));
  } catch (error) {
    console.info('What was judged is not remembered: this browser has no room or keeps nothing for this page.', error);
  }
}
