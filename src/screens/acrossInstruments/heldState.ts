/** What is known so far while the instruments are gone through. */
import type { Instrument } from '../../piano/instrument.ts';
import type { FoundJob, LookBackNews } from './lookBack.ts';

export type HeldState = {
  readonly phase: 'working' | 'stopped' | 'finished';
  readonly jobCount: number;
  /** What is being done now. */
  readonly now: Extract<LookBackNews, { kind: 'reading' | 'visit' }> | null;
  readonly found: readonly FoundJob[];
  readonly withoutWork: readonly Instrument[];
  readonly failed: readonly { readonly name: string; readonly detail: string }[];
};

export const NOTHING_YET: HeldState = {
  phase: 'working',
  jobCount: 0,
  now: null,
  found: [],
  withoutWork: [],
  failed: [],
};

export function withNews(state: HeldState, news: LookBackNews | { readonly kind: 'stopped' }): HeldState {
  switch (news.kind) {
    case 'plan':
      return { ...state, jobCount: news.jobCount, withoutWork: news.withoutWork };
    case 'reading':
    case 'visit':
      return { ...state, now: news };
    case 'found':
      return { ...state, found: [...state.found, news.found] };
    case 'failed':
      return { ...state, failed: [...state.failed, { name: news.name, detail: news.detail }] };
    case 'finished':
      return { ...state, phase: 'finished', now: null };
    case 'stopped':
      return { ...state, phase: 'stopped', now: null };
  }
}
