/** What the screen shows of what was found, by the choices that were made. */
import type { Instrument } from '../../piano/instrument.ts';
import {
  type Grouping,
  type HeldGroup,
  type HeldJob,
  heldGroups,
} from '../../stability/acrossInstruments/heldGroups.ts';
import { type Alarm, heldSpan } from '../../stability/acrossInstruments/heldSpan.ts';
import { atRiskAt } from '../../stability/acrossInstruments/productLimit.ts';
import type { SharePoint } from '../../ui/held/ShareChart.tsx';
import type { FoundJob } from './lookBack.ts';

export type Whose = 'own' | 'invented';
export type HeldChoices = { readonly alarm: Alarm; readonly grouping: Grouping; readonly whose: Whose };

export type UnjudgedJob = { readonly found: FoundJob; readonly visitCount: number };
export type HeldView = {
  /** Those watched longest first. */
  readonly jobs: readonly HeldJob[];
  readonly groups: readonly HeldGroup[];
  readonly unjudged: readonly UnjudgedJob[];
  /** Those with work, each once. */
  readonly instruments: readonly Instrument[];
};

/** Invented instruments and real ones are never counted together. */
export function heldView(found: readonly FoundJob[], { alarm, grouping, whose }: HeldChoices): HeldView {
  const wanted = found.filter(({ instrument }) => instrument.isDemonstration === (whose === 'invented'));
  const jobs: HeldJob[] = [];
  const unjudged: UnjudgedJob[] = [];
  for (const one of wanted) {
    const judged = heldSpan(one.job, one.course, alarm, one.laterWorkOn);
    if (judged.isJudged) jobs.push({ instrument: one.instrument, blockKind: one.blockKind, held: judged.held });
    else unjudged.push({ found: one, visitCount: judged.visitCount });
  }
  jobs.sort((a, b) => b.held.span.exitYears - a.held.span.exitYears);
  const instruments = [...new Map(wanted.map(({ instrument }) => [instrument.id, instrument])).values()];
  return { jobs, groups: heldGroups(jobs, grouping), unjudged, instruments };
}

/** Under observation at a time; at its very beginning those that begin there count. */
export function atRisk({ jobs }: HeldGroup, years: number): number {
  const spans = jobs.map(({ held }) => held.span);
  return years === 0 ? spans.filter(({ entryYears }) => entryYears === 0).length : atRiskAt(spans, years);
}

export function sharePoints({ curve, jobs }: HeldGroup): SharePoint[] {
  const lastSeen = jobs.filter(({ held }) => !held.span.hasEnded).map(({ held }) => held.span.exitYears);
  return (curve?.steps ?? []).map(({ years, share, low, high }) => ({
    years,
    share,
    low,
    high,
    isLastSeen: lastSeen.includes(years),
  }));
}
