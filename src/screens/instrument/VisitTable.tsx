import { formatCents, formatDate, formatHumidity, formatTemperature, NOT_MEASURED } from '../../piano/format.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import type { Observed } from '../../ui/useObserved.ts';
import styles from './instrument.module.css';
import type { InstrumentFigures, InstrumentPage } from './useInstrument.ts';
import type { VisitChange } from './visitChanges.ts';
import { type StageFigures, type VisitFigures, visitFigures } from './visitFigures.ts';

const words = texts.instrument.visits;

/** So many visits stand open; the chart below them should not be pushed out of sight by ten years of visits. */
const LATEST_COUNT = 6;

type Row = VisitFigures & { readonly interval: VisitChange | null; readonly isRead: boolean };
type Props = { readonly page: InstrumentPage; readonly figures: Observed<InstrumentFigures> };

const COLUMNS: readonly Column<Row>[] = [
  {
    key: 'date',
    title: words.date,
    isRowHeader: true,
    cell: ({ visit }) => (
      <a href={routeToHref({ screen: 'visit', visitId: visit.id })}>{formatDate(visit.visitedOn)}</a>
    ),
  },
  { key: 'humidity', title: words.humidity, isNumber: true, cell: (row) => formatHumidity(row.visit.humidityPct) },
  {
    key: 'temperature',
    title: words.temperature,
    isNumber: true,
    cell: (row) => formatTemperature(row.visit.temperatureC),
  },
  { key: 'found', title: words.asFound, cell: (row) => <StageLink stage={row.asFound} isRead={row.isRead} /> },
  { key: 'left', title: words.asLeft, cell: (row) => <StageLink stage={row.asLeft} isRead={row.isRead} /> },
  {
    key: 'movement',
    title: words.movement,
    isNumber: true,
    cell: (row) => formatCents(row.interval?.change.medianCents ?? null),
  },
];

/** The latest visit first. Counts and movement fill in when the takes have been read. */
export function VisitTable({ page, figures }: Props) {
  if (page.visits.length === 0)
    return (
      <EmptyState>
        <p>{words.empty}</p>
        <ol className={styles.steps}>
          {Object.values(words.firstSteps).map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </EmptyState>
    );
  const rows = [...rowsOf(page, figures)].reverse();
  const earlier = rows.slice(LATEST_COUNT);
  return (
    <>
      <Rows rows={rows.slice(0, LATEST_COUNT)} caption={words.caption} />
      {earlier.length > 0 && (
        <Disclosure summary={words.earlier(earlier.length)}>
          <Rows rows={earlier} caption={words.earlier(earlier.length)} />
        </Disclosure>
      )}
    </>
  );
}

function Rows({ rows, caption }: { readonly rows: readonly Row[]; readonly caption: string }) {
  return (
    <DataTable
      caption={caption}
      isCaptionHidden
      columns={COLUMNS}
      rows={rows}
      rowKey={(row) => row.visit.id}
      stacksWhenNarrow
    />
  );
}

function rowsOf(page: InstrumentPage, figures: Observed<InstrumentFigures>): Row[] {
  if (figures.state !== 'ready')
    return visitFigures(page.visits, page.surveys, []).map((row) => ({ ...row, interval: null, isRead: false }));
  const { visits, intervals } = figures.value;
  return visits.map((row) => {
    const interval = intervals.find((candidate) => candidate.toVisit.id === row.visit.id) ?? null;
    return { ...row, interval, isRead: true };
  });
}

function StageLink({ stage, isRead }: { readonly stage: StageFigures | null; readonly isRead: boolean }) {
  if (!stage) return NOT_MEASURED;
  const href = routeToHref({ screen: 'survey', surveyId: stage.surveyId });
  return <a href={href}>{isRead ? words.notes(stage.noteCount) : '…'}</a>;
}
