/** The life line as its chart and its sheet want it. */
import type { CsvSheet } from '../../files/csvTable.ts';
import { formatCents, formatDate, formatHumidity } from '../../piano/format.ts';
import type { InstrumentEvent } from '../../piano/instrument.ts';
import type { LifeLineVisit, OverallPitch } from '../../stability/lifeLine.ts';
import { roundScale } from '../../ui/chartScale.ts';
import type { TimeChartProps, TimeMark, TimePoint } from '../../ui/charts/TimeChart.tsx';
import { type TimeScale, timeOf } from '../../ui/charts/timeScale.ts';
import { texts } from '../../ui/texts.ts';
import { SIGMAS } from './sigmas.ts';

const words = texts.stability.lifeLine;

type Stage = 'asFound' | 'asLeft';

export function pitchChart(
  visits: readonly LifeLineVisit[],
  time: TimeScale,
  marks: readonly TimeMark[],
): TimeChartProps {
  const found = pointsOf(visits, 'asFound', words.found);
  const left = pointsOf(visits, 'asLeft', words.left);
  const first = visits[0]?.visitedOn ?? '';
  const last = visits.at(-1)?.visitedOn ?? '';
  return {
    summary: words.summary(visits.length, formatDate(first), formatDate(last)),
    series: [
      { name: words.found, shape: 'triangle', points: found },
      { name: words.left, shape: 'disc', points: left },
    ],
    links: driftLinks(visits),
    time,
    scale: roundScale([...found, ...left].flatMap(({ low, high }) => [low, high])),
    marks,
  };
}

function pointsOf(visits: readonly LifeLineVisit[], stage: Stage, name: string): TimePoint[] {
  return visits.flatMap((visit) => {
    const pitch = visit[stage];
    return pitch ? [pointOf(visit.visitedOn, pitch, name)] : [];
  });
}

function pointOf(date: string, { cents, standardUncertaintyCents }: OverallPitch, name: string): TimePoint {
  const reach = SIGMAS * standardUncertaintyCents;
  const detail = `${formatDate(date)}, ${name}: ${formatCents(cents, standardUncertaintyCents)}`;
  return { x: timeOf(date), y: cents, low: cents - reach, high: cents + reach, detail };
}

/** From where each visit left the piano to where the next one found it. A visit that only found it left it so. */
function driftLinks(visits: readonly LifeLineVisit[]): { x: number; y: number }[][] {
  const links: { x: number; y: number }[][] = [];
  let last: { x: number; y: number } | undefined;
  for (const { visitedOn, asFound, asLeft } of visits) {
    const x = timeOf(visitedOn);
    if (last && asFound) links.push([last, { x, y: asFound.cents }]);
    const now = asLeft ?? asFound;
    if (now) last = { x, y: now.cents };
  }
  return links;
}

export function humidityChart(visits: readonly LifeLineVisit[], time: TimeScale): TimeChartProps | null {
  const points = visits.flatMap(({ visitedOn, humidityPct }): TimePoint[] => {
    if (humidityPct === null) return [];
    const detail = `${formatDate(visitedOn)}: ${formatHumidity(humidityPct)}`;
    return [{ x: timeOf(visitedOn), y: humidityPct, low: humidityPct, high: humidityPct, detail }];
  });
  if (points.length === 0) return null;
  const values = points.map((point) => point.y);
  const low = Math.max(0, Math.floor((Math.min(...values) - 3) / 10) * 10);
  const high = Math.min(100, Math.ceil((Math.max(...values) + 3) / 10) * 10);
  const ticks = Array.from({ length: (high - low) / 10 + 1 }, (_, index) => low + 10 * index);
  return {
    summary: words.humiditySummary(points.length),
    series: [{ name: words.humidity, shape: 'square', points }],
    links: [points],
    time,
    scale: { low, high, ticks },
    marks: [],
    isUnsigned: true,
    isLow: true,
  };
}

/** Work within the years drawn, numbered where names would run into each other; the list below the chart says what the numbers mean. */
export function workMarks(events: readonly InstrumentEvent[], { low, high }: TimeScale): TimeMark[] {
  const inOrder = [...events].sort((a, b) => (a.happenedOn < b.happenedOn ? -1 : 1));
  return inOrder
    .map((event, index) => ({ x: timeOf(event.happenedOn), label: String(index + 1) }))
    .filter((mark) => mark.x >= low && mark.x <= high);
}

export function lifeLineSheet(visits: readonly LifeLineVisit[]): CsvSheet {
  const cells = (pitch: OverallPitch | null) =>
    pitch ? [pitch.cents, pitch.standardUncertaintyCents, pitch.stringCount] : [null, null, null];
  return {
    columns: [
      'visit_date',
      'rh_percent',
      'temp_c',
      'as_found_cents',
      'as_found_cents_u',
      'as_found_strings',
      'as_left_cents',
      'as_left_cents_u',
      'as_left_strings',
    ],
    rows: visits.map(({ visitedOn, humidityPct, temperatureC, asFound, asLeft }) => [
      visitedOn,
      humidityPct,
      temperatureC,
      ...cells(asFound),
      ...cells(asLeft),
    ]),
  };
}
