/** One string's years as their chart and sheet want them. */
import type { CsvSheet } from '../../files/csvTable.ts';
import { formatCents, formatDate } from '../../piano/format.ts';
import { formatRate } from '../../piano/formatStability.ts';
import type { JudgedPin } from '../../stability/drift/judgedPin.ts';
import type { StringHistory } from '../../stability/driftViews.ts';
import { roundScale } from '../../ui/chartScale.ts';
import type { TimeChartProps } from '../../ui/charts/TimeChart.tsx';
import { timeOf, timeScale } from '../../ui/charts/timeScale.ts';
import { texts } from '../../ui/texts.ts';
import { SIGMAS } from './sigmas.ts';

const words = texts.stability.string;

type Told = { readonly on: string; readonly cents: number; readonly standardUncertaintyCents: number };

export function stringChart(history: StringHistory, name: string, pin: JudgedPin | undefined): TimeChartProps {
  const points = history.offsets.map((offset) => ({
    ...barOf(offset),
    detail: `${formatDate(offset.on)}: ${formatCents(offset.cents, offset.standardUncertaintyCents)}`,
  }));
  const line = history.line?.map(barOf);
  const rate = formatRate(pin?.slip.centsPerYear ?? null, pin?.slip.standardUncertainty ?? null);
  return {
    summary: words.summary(name, points.length, rate),
    series: [{ name: words.offsets, shape: 'disc', points }],
    ...(line ? { curve: { name: words.line, stretches: [line] } } : {}),
    time: timeScale(
      history.offsets.map((offset) => offset.on),
      7,
    ),
    scale: roundScale([...points, ...(line ?? [])].flatMap(({ low, high }) => [low, high])),
    marks: [],
  };
}

function barOf({ on, cents, standardUncertaintyCents }: Told) {
  const reach = SIGMAS * standardUncertaintyCents;
  return { x: timeOf(on), y: cents, low: cents - reach, high: cents + reach };
}

export function stringSheet({ midi, stringPosition, offsets, line }: StringHistory): CsvSheet {
  return {
    columns: ['midi', 'string', 'visit_date', 'own_drift_cents', 'own_drift_cents_u', 'slip_line_cents'],
    rows: offsets.map(({ on, cents, standardUncertaintyCents }, index) => [
      midi,
      stringPosition,
      on,
      cents,
      standardUncertaintyCents,
      line?.[index]?.cents ?? null,
    ]),
  };
}
