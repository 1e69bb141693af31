/** The forecast as its chart, its sheet and its sentences want it. */
import type { CsvSheet } from '../../files/csvTable.ts';
import { formatCents, formatDate, formatSpreadCents } from '../../piano/format.ts';
import { formatHumidityAbout, formatWholeHumidity } from '../../piano/formatStability.ts';
import { type Forecast, forecastOn } from '../../stability/forecast.ts';
import type { InstrumentForecast } from '../../stability/forecastOfDrift.ts';
import { roundScale } from '../../ui/chartScale.ts';
import type { TimeChartProps } from '../../ui/charts/TimeChart.tsx';
import { timeOf, timeScale } from '../../ui/charts/timeScale.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stability.forecast;
type Known = Extract<InstrumentForecast, { known: true }>;

/** So far the drawing goes; the sheet has it all. */
const MONTHS_DRAWN = 24;

export function forecastChart(forecast: Forecast, limitCents: number): TimeChartProps {
  const drawn = forecast.points.slice(0, MONTHS_DRAWN + 1);
  const line = drawn.map(({ on, rmsCents }) => ({
    x: timeOf(on),
    y: rmsCents.expected,
    low: rmsCents.low,
    high: rmsCents.high,
  }));
  const points = drawn.map(({ on, rmsCents }) => {
    const { expected, low, high } = rmsCents;
    const detail = words.point(
      formatDate(on),
      formatSpreadCents(expected),
      formatSpreadCents(low),
      formatSpreadCents(high),
    );
    return { x: timeOf(on), y: expected, low: expected, high: expected, detail };
  });
  const dates = drawn.map((point) => point.on);
  const scale = roundScale([limitCents, ...line.map((point) => point.high)]);
  return {
    summary: words.summary(formatDate(dates[0] ?? ''), formatDate(dates.at(-1) ?? '')),
    series: [{ name: words.expected, shape: 'disc', points }],
    curve: { name: words.curve, stretches: [line] },
    time: timeScale(dates, 6),
    scale: { ...scale, low: 0, ticks: scale.ticks.filter((tick) => tick >= 0) },
    marks: [],
    limit: { y: limitCents, label: words.limitMark },
    isUnsigned: true,
  };
}

export function forecastSheet({ points }: Forecast): CsvSheet {
  return {
    columns: [
      'date',
      'rh_percent',
      'rh_percent_u',
      'median_cents',
      'median_cents_u',
      'rms_cents',
      'rms_cents_16_percent',
      'rms_cents_84_percent',
    ],
    rows: points.map((point) => [
      point.on,
      point.humidityPct,
      point.humidityUncertaintyPct,
      point.medianCents,
      point.medianUncertaintyCents,
      point.rmsCents.expected,
      point.rmsCents.low,
      point.rmsCents.high,
    ]),
  };
}

/** Movement by the next turn of the season after today. */
export function seasonSentences({ climate, request }: Known, today: string): string[] {
  const from = today > request.leftOn ? today : request.leftOn;
  const turn = climate.nextTurn(from);
  const { humidityPct, humidityUncertaintyPct, medianCents, medianUncertaintyCents, rmsCents } = forecastOn(
    turn.on,
    request,
  );
  return [
    words.season(formatDate(turn.on), words.kinds[turn.kind], formatHumidityAbout(humidityPct, humidityUncertaintyPct)),
    words.movement(
      formatCents(medianCents, medianUncertaintyCents),
      formatSpreadCents(rmsCents.expected),
      formatSpreadCents(rmsCents.low),
      formatSpreadCents(rmsCents.high),
    ),
  ];
}

export function dueSentence({ due }: Forecast, today: string): string {
  const { expectedOn, earliestOn, latestOn } = due;
  if (expectedOn === null) return earliestOn === null ? words.notDue : words.notDueBut(formatDate(earliestOn));
  const early = formatDate(earliestOn ?? expectedOn);
  const range = latestOn === null ? words.from(early) : words.between(early, formatDate(latestOn));
  const passed = expectedOn < today ? ` ${words.passed}` : '';
  return `${words.due(formatDate(expectedOn))}${range}${passed}`;
}

export function basisSentences({ climate, responseBasis, includesSettling }: Known): string[] {
  const sentences = [
    climate.basis === 'record'
      ? words.climateRecord(
          climate.readingCount,
          formatWholeHumidity(climate.meanPct),
          formatWholeHumidity(climate.swingPct),
        )
      : words.climateAssumed,
  ];
  if (responseBasis === 'assumption') sentences.push(words.responseAssumed);
  if (includesSettling) sentences.push(words.settling);
  return sentences;
}
