/**
 * The judgement of an instrument's years, made once for each state of its records and kept while the page lives. Two screens that ask for
 * the same get the same.
 */
import type { InstrumentId } from '../piano/ids.ts';
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { HistoryToJudge } from './driftMessages.ts';
import { openDrift, type RunningDrift } from './openDrift.ts';

export type JudgedDrift = {
  /** Null where it was broken off. */
  readonly drift: Promise<Drift | null>;
  readonly cancel: () => void;
};

type Kept = { readonly state: string; readonly drift: Drift };

const kept = new Map<InstrumentId, Kept>();

/** What is known of this state of the records, without work; undefined where it has to be judged first. */
export function knownDrift(instrumentId: InstrumentId, history: HistoryToJudge): Drift | undefined {
  const known = kept.get(instrumentId);
  return known?.state === stateOf(history) ? known.drift : undefined;
}

/** @param open for tests, in place of the worker */
export function judgedDrift(
  instrumentId: InstrumentId,
  history: HistoryToJudge,
  open: typeof openDrift = openDrift,
): JudgedDrift {
  const known = knownDrift(instrumentId, history);
  if (known) return { drift: Promise.resolve(known), cancel: () => undefined };
  let found: Drift | null = null;
  const running: RunningDrift = open({ kind: 'judge', history }, (report) => {
    if (report.kind === 'judged') found = report.drift;
  });
  const drift = running.ended.then(() => {
    if (found) kept.set(instrumentId, { state: stateOf(history), drift: found });
    return found;
  });
  return { drift, cancel: running.cancel };
}

/** A short text that changes with any figure of the history: FNV-1a over its JSON text (G. Fowler, L. Noll, P. Vo 1991; from memory), twice. */
export function stateOf(history: HistoryToJudge): string {
  const text = JSON.stringify(history);
  let one = 0x811c9dc5;
  let other = 0x9dc5811c;
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    one = Math.imul(one ^ code, 0x01000193);
    other = Math.imul(other ^ code, 0x01000193) ^ (other >>> 15);
  }
  return `${text.length} ${one >>> 0} ${other >>> 0}`;
}
