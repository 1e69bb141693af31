/** What the drift worker can be asked, and what it answers: an instrument's years judged, invented ones tried out, a survey's curves. */
import type { Compass } from '../piano/compass.ts';
import type { Drift, DriftRequest } from '../stability/drift/analyseDrift.ts';
import type { WhatIfQuestion, WhatIfTrial } from '../stability/whatIf.ts';
import type { CurveReading, SurveyCurves } from '../survey/surveyCurves.ts';

/** All but the random numbers, which the worker makes itself: the same history, the same judgement. */
export type HistoryToJudge = Omit<DriftRequest, 'random'>;

export type SurveyToCurve = {
  readonly readings: readonly CurveReading[];
  readonly compass: Compass;
  readonly bassBridgeTopMidi: number | null;
};

export type DriftWork =
  | { readonly kind: 'judge'; readonly history: HistoryToJudge }
  /** One trial for each seed, each told as it ends. */
  | { readonly kind: 'what-if'; readonly question: WhatIfQuestion; readonly seeds: readonly number[] }
  | { readonly kind: 'curves'; readonly survey: SurveyToCurve };

export type DriftReport =
  | { readonly kind: 'judged'; readonly drift: Drift }
  | { readonly kind: 'trial'; readonly trial: WhatIfTrial }
  | { readonly kind: 'curves'; readonly curves: SurveyCurves }
  | { readonly kind: 'finished' }
  | { readonly kind: 'failed'; readonly detail: string };
