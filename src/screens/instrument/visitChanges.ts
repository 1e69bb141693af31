/** What happened between an instrument's visits, by the rules of `intervalsOf`. */
import type { SurveyId } from '../../piano/ids.ts';
import type { InstrumentEvent, Survey, SurveyStage, Take, Visit } from '../../piano/instrument.ts';
import type { NoteReading } from '../../piano/reading.ts';
import { medianOf } from '../../piano/robustStatistics.ts';
import { baselineReadings } from '../../stability/baselineReadings.ts';
import { changeBetween, type SurveyChange } from '../../stability/change.ts';
import { type Interval, intervalsOf, workWithin } from '../../stability/changeIntervals.ts';

export type VisitChange = {
  readonly fromVisit: Visit;
  readonly toVisit: Visit;
  readonly years: number;
  /** What the interval starts from: as left, or as found where the piano was not tuned. */
  readonly fromStage: SurveyStage;
  /** Worked out when it is first asked for: all of them at once would keep the page from answering. */
  readonly change: WholeChange;
  /** What was done within the interval; the strings that it touched are left out. */
  readonly work: readonly InstrumentEvent[];
};

type WholeChange = SurveyChange & { readonly medianCents: number | null };

type ReadVisits = {
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  readonly events: readonly InstrumentEvent[];
};

/** Every stretch over which strings were left alone, oldest first. A survey without a kept take counts as none. */
export function visitChanges({ visits, surveys, events }: ReadVisits, keptTakes: readonly Take[]): VisitChange[] {
  const bySurvey = new Map<SurveyId, NoteReading[]>();
  for (const { surveyId, reading } of keptTakes) bySurvey.set(surveyId, [...(bySurvey.get(surveyId) ?? []), reading]);
  const readingsOf = (ids: readonly SurveyId[]) => ids.flatMap((id) => bySurvey.get(id) ?? []);
  const read = surveys.filter(({ id }) => bySurvey.has(id));
  return intervalsOf(visits, read, events).flatMap((interval) => {
    const { from: fromVisit, to: toVisit, years, baseline, asFoundSurveyIds } = interval;
    if (!baseline.known) return [];
    const work = workWithin(interval, events);
    const found = { fromVisit, toVisit, years, fromStage: baseline.stage, work };
    let change: WholeChange | null = null;
    return [
      {
        ...found,
        get change() {
          change ??= wholeChange(readingsAtStart(interval, readingsOf), readingsOf(asFoundSurveyIds));
          return change;
        },
      },
    ];
  });
}

function wholeChange(from: readonly NoteReading[], to: readonly NoteReading[]): WholeChange {
  const change = changeBetween(from, to);
  const cents = change.notes.map(({ changeCents }) => changeCents);
  return { ...change, medianCents: cents.length > 0 ? medianOf(cents) : null };
}

/** Of that visit only, so that all changes are over the same time. */
function readingsAtStart(
  interval: Interval,
  readingsOf: (ids: readonly SurveyId[]) => readonly NoteReading[],
): NoteReading[] {
  const earlier = interval.earlier.filter(({ from }) => from.id === interval.from.id);
  return baselineReadings({ ...interval, earlier }, readingsOf).map(({ reading }) => reading);
}
