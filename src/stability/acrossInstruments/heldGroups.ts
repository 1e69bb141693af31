/** Jobs of one kind, on blocks of one kind, taken together: a rate where there are enough of them, else each by itself. */
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument, PinBlockKind } from '../../piano/instrument.ts';
import type { HeldSpan } from './heldSpan.ts';
import type { Job, WorkKind } from './jobs.ts';
import { productLimit, type ShareCurve } from './productLimit.ts';

/** From fewer instruments no rate is worth a word: with four that all held, the share may still be as low as four in ten. */
export const FEWEST_INSTRUMENTS = 5;

export type HeldJob = {
  readonly instrument: Pick<Instrument, 'id' | 'name' | 'isDemonstration'>;
  /** When the work was done; null where nobody said, or where the block was changed later. */
  readonly blockKind: PinBlockKind | null;
  readonly held: HeldSpan;
};

export type Grouping = 'block' | 'work';

export type HeldGroup = {
  /** A kind of block, kinds of work joined by a plus sign, or empty where the block is not known. */
  readonly key: PinBlockKind | '' | `${WorkKind}${string}`;
  readonly jobs: readonly HeldJob[];
  readonly instrumentCount: number;
  /** Null: too few. */
  readonly curve: ShareCurve | null;
};

/** The largest group first. Invented instruments are not mixed with real ones: say which are wanted. */
export function heldGroups(jobs: readonly HeldJob[], grouping: Grouping): HeldGroup[] {
  const byKey = new Map<HeldGroup['key'], HeldJob[]>();
  for (const job of jobs) {
    const key = grouping === 'block' ? (job.blockKind ?? '') : workKey(job.held.job);
    byKey.set(key, [...(byKey.get(key) ?? []), job]);
  }
  const groups = [...byKey].map(([key, own]) => groupOf(key, own));
  return groups.sort((a, b) => b.instrumentCount - a.instrumentCount || (a.key < b.key ? -1 : 1));
}

function groupOf(key: HeldGroup['key'], jobs: readonly HeldJob[]): HeldGroup {
  const instrumentCount = new Set<InstrumentId>(jobs.map(({ instrument }) => instrument.id)).size;
  const isEnough = instrumentCount >= FEWEST_INSTRUMENTS && key !== '';
  return { key, jobs, instrumentCount, curve: isEnough ? productLimit(jobs.map(({ held }) => held.span)) : null };
}

/** @example workKey({ kinds: ['block-work', 'restrung'] }) // 'block-work+restrung' */
function workKey({ kinds }: Pick<Job, 'kinds'>): `${WorkKind}${string}` {
  return kinds.join('+') as `${WorkKind}${string}`;
}

/** The instrument's kind of block is today's: it says nothing of work before the block itself was last worked on. */
export function blockKindAt(
  instrument: Pick<Instrument, 'pinBlockKind'>,
  job: Job,
  jobs: readonly Job[],
): PinBlockKind | null {
  const isChangedLater = jobs.some(
    (later) => later.doneOn > job.doneOn && later.kinds.includes('block-work') && later.range === null,
  );
  return isChangedLater ? null : (instrument.pinBlockKind ?? null);
}
