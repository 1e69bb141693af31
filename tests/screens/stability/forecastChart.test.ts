import { describe, expect, it } from 'vitest';
import {
  basisSentences,
  dueSentence,
  forecastChart,
  forecastSheet,
  seasonSentences,
} from '../../../src/screens/stability/forecastChart.ts';
import { type ForecastRequest, forecastOf } from '../../../src/stability/forecast.ts';
import { roomClimate } from '../../../src/stability/forecastClimate.ts';

const request: ForecastRequest = {
  strings: [{ centsPerPct: 0.7, responseUncertainty: 0.05, slipCentsPerYear: 0, slipUncertainty: 0 }],
  leftOn: '2024-02-15',
  leftHumidityPct: 38,
  climate: roomClimate([{ visitedOn: '2024-02-15', humidityPct: 38 }]),
  common: { centsPerYear: -0.5, standardUncertainty: 0.3, scatterCents: 1 },
  strayCentsPerRootYear: 0.8,
  limitCents: 5,
};
const forecast = forecastOf(request);
const outcome = {
  known: true as const,
  forecast,
  climate: request.climate,
  responseBasis: 'assumption' as const,
  includesSettling: true,
  request,
};
const due = (earliestOn: string | null, expectedOn: string | null, latestOn: string | null) =>
  dueSentence({ points: [], due: { earliestOn, expectedOn, latestOn } }, '2024-06-01');

describe('the forecast in words', () => {
  it('names the day with its range, and says when it has passed', () => {
    expect(due('2024-07-01', '2024-08-01', '2024-10-01')).toBe(
      'Worth coming back: about 1 August 2024; between 1 July 2024 and 1 October 2024 in two cases of three.',
    );
    expect(due('2024-07-01', '2024-08-01', null)).toContain('from 1 July 2024 at the earliest');
    expect(due('2024-03-01', '2024-04-01', '2024-05-01')).toMatch(/That day has passed\.$/);
    expect(due('2024-09-01', null, null)).toContain('may be from 1 September 2024 on');
    expect(due(null, null, null)).toMatch(/not likely/);
  });

  it('goes to the next turn of the season after today', () => {
    expect(seasonSentences(outcome, '2024-03-01')[0]).toMatch(/^Next dampest time: about \d+ August 2024/);
    expect(seasonSentences(outcome, '2024-08-20')[0]).toMatch(/^Next driest time: about \d+ February 2025/);
  });

  it('says what is assumed and what is in it', () => {
    expect(basisSentences(outcome)).toHaveLength(3);
    expect(basisSentences(outcome)[0]).toMatch(/assumed/);
  });
});

it('the chart draws two years up to the limit at least, and the sheet holds all three', () => {
  const chart = forecastChart(forecast, 40);
  expect(chart.curve?.stretches[0]).toHaveLength(25);
  expect(chart.scale.low).toBe(0);
  expect(chart.scale.high).toBeGreaterThanOrEqual(40);
  expect(forecastSheet(forecast).rows).toHaveLength(37);
});
