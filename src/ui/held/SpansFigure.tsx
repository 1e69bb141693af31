import { ChartFigure, type LegendItem } from '../charts/ChartFigure.tsx';
import { Picture } from '../charts/Picture.tsx';
import { fetchedOnce } from '../fetchedOnce.ts';
import { texts } from '../texts.ts';
import { LegendSpan, LegendWatched } from './SpanSign.tsx';
import { type SpanEnd, type SpanRow, spansHeightPx } from './spanRow.ts';

const SPANS_CHART = fetchedOnce(async () => (await import('./SpansChart.tsx')).SpansChart);

const words = texts.held.spans;
const ENDS: readonly SpanEnd[] = ['holding', 'watch', 'giving way'];
const LEGEND: readonly LegendItem[] = [
  { key: 'unwatched', sign: <LegendWatched isWatched={false} />, meaning: words.unwatched },
  { key: 'watched', sign: <LegendWatched isWatched />, meaning: words.watched },
  ...ENDS.map((end) => ({ key: end, sign: <LegendSpan end={end} />, meaning: words.ends[end] })),
];

/** For how long each job was watched, and how it stood at the end: true for one instrument and for fifty. */
export function SpansFigure({ rows }: { readonly rows: readonly SpanRow[] }) {
  return (
    <ChartFigure
      name={words.name}
      title={words.title}
      legend={LEGEND}
      sheet={() => ({
        columns: ['instrument', 'work', 'watched_from_years', 'watched_to_years', 'end'],
        rows: rows.map(({ name, detail, fromYears, toYears, end }) => [name, detail, fromYears, toYears, end]),
      })}
    >
      <Picture
        drawing={SPANS_CHART}
        heightPx={spansHeightPx(rows)}
        chart={{ summary: words.summary(rows.length), rows }}
      />
    </ChartFigure>
  );
}
