/** What the drift worker can be asked, and what it answers: an instrument's years judged, or invented ones tried out. */
import type { Drift, DriftRequest } from '../stability/drift/analyseDrift.ts';
import type { WhatIfQuestion, WhatIfTrial } from '../stability/whatIf.ts';

/** All but the random numbers, which the worker makes itself: the same history, the same judgement. */
export type HistoryToJudge = Omit<DriftRequest, 'random'>;

export type DriftWork =
  | { readonly kind: 'judge'; readonly history: HistoryToJudge }
  /** One trial for each seed, each told as it ends. */
  | { readonly kind: 'what-if'; readonly question: WhatIfQuestion; readonly seeds: readonly number[] };

export type DriftReport =
  | { readonly kind: 'judged'; readonly drift: Drift }
  | { readonly kind: 'trial'; readonly trial: WhatIfTrial }
  | { readonly kind: 'finished' }
  | { readonly kind: 'failed'; readonly detail: string };
