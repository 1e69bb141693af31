import { useMemo, useState } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument, InstrumentEvent, Survey, Take, Visit } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { historyOfRecords, type InstrumentHistory } from '../../stability/historyOfRecords.ts';
import { recordedTakes } from '../../survey/recordedTakes.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { type VisitChange, visitChanges } from './visitChanges.ts';
import { type VisitFigures, visitFigures } from './visitFigures.ts';

export type InstrumentPage = {
  readonly instrument: Instrument;
  readonly visits: readonly Visit[];
  readonly surveys: readonly Survey[];
  readonly events: readonly InstrumentEvent[];
};

export type InstrumentFigures = {
  readonly visits: readonly VisitFigures[];
  readonly intervals: readonly VisitChange[];
};

export type InstrumentView = {
  readonly page: Observed<InstrumentPage | null>;
  /** Takes a moment longer than the page: every take of the instrument is read for it. */
  readonly figures: Observed<InstrumentFigures>;
  /** What the judgement of its pins starts from; null until the takes are read. */
  readonly history: InstrumentHistory | null;
  readonly chosen: VisitChange | null;
  /** By the date of the visit it ends at. */
  readonly choose: (toVisitId: string) => void;
};

export function useInstrument(records: Records, instrumentId: InstrumentId): InstrumentView {
  const page = useObserved<InstrumentPage | null>(`page ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readPage(records, instrumentId), onValue, onFault),
  );
  const takes = useObserved<Take[]>(`takes ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readRecordedTakes(records, instrumentId), onValue, onFault),
  );
  const figures = useMemo(() => figuresOf(page, takes), [page, takes]);
  const history = useMemo(() => historyOf(page, takes), [page, takes]);
  const [chosenVisitId, choose] = useState<string | null>(null);
  const intervals = figures.state === 'ready' ? figures.value.intervals : [];
  const chosen = intervals.find((interval) => interval.toVisit.id === chosenVisitId) ?? intervals.at(-1) ?? null;
  return { page, figures, history, chosen, choose };
}

async function readPage(records: Records, instrumentId: InstrumentId): Promise<InstrumentPage | null> {
  const instrument = await records.instrument(instrumentId);
  if (!instrument) return null;
  const [visits, surveys, events] = await Promise.all([
    records.visitsOf(instrumentId),
    records.surveysOfInstrument(instrumentId),
    records.eventsOf(instrumentId),
  ]);
  return { instrument, visits, surveys, events };
}

/** The kept takes, survey by survey, with the uncertainty that the other takes of each survey support. */
async function readRecordedTakes(records: Records, instrumentId: InstrumentId): Promise<Take[]> {
  const surveys = await records.surveysOfInstrument(instrumentId);
  const takes = await Promise.all(surveys.map((survey) => records.takesOfSurvey(survey.id)));
  return takes.flatMap((ofSurvey) => recordedTakes(ofSurvey).kept);
}

function historyOf(page: Observed<InstrumentPage | null>, takes: Observed<Take[]>): InstrumentHistory | null {
  if (takes.state !== 'ready' || page.state !== 'ready' || !page.value) return null;
  return historyOfRecords({ ...page.value, takes: takes.value });
}

function figuresOf(page: Observed<InstrumentPage | null>, takes: Observed<Take[]>): Observed<InstrumentFigures> {
  if (takes.state !== 'ready') return takes;
  if (page.state !== 'ready') return page;
  if (!page.value) return { state: 'loading' };
  const visits = visitFigures(page.value.visits, page.value.surveys, takes.value);
  return { state: 'ready', value: { visits, intervals: visitChanges(page.value, takes.value) } };
}
