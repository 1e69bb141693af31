import { describe, expect, it } from 'vitest';
import { analyseDrift } from '../../src/stability/drift/analyseDrift.ts';
import { seededNormal } from '../../src/stability/drift/seededNormal.ts';
import { forecastOn } from '../../src/stability/forecast.ts';
import { forecastOfDrift } from '../../src/stability/forecastOfDrift.ts';
import { simulateHistory } from '../../src/stability/simulateHistory.ts';
import { regularVisits, usualPlan } from '../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../support/seededRandom.ts';

const INSTRUMENT = { compass: null, bassBridgeTopMidi: 43, strutsAfterMidi: [43, 71] };
const VISITS = 13;

/** Judges all visits but the last, foretells the last one's as-found, and says how far off that was in its own uncertainty. */
function foretoldAgainstFound(seed: number) {
  const visits = regularVisits('2015-03-01', VISITS, 6);
  const { readings } = simulateHistory(usualPlan({ visits }), seededRandom(seed));
  const last = visits.at(-1)?.on ?? '';
  const known = readings.filter((reading) => reading.visitedOn < last);
  const drift = analyseDrift({
    readings: known,
    events: [],
    instrument: INSTRUMENT,
    thresholdCentsPerYear: 1,
    random: seededNormal(1),
  });
  const outcome = forecastOfDrift(drift, { readings: known, instrument: INSTRUMENT }, 5);
  if (!outcome.known) throw new Error('no forecast');
  const point = forecastOn(last, outcome.request);
  const left = new Map(
    known
      .filter((one) => one.visitedOn === outcome.request.leftOn && one.stage === 'as-left')
      .map((one) => [one.midi, one.cents]),
  );
  const changes = readings
    .filter((one) => one.visitedOn === last && one.stage === 'as-found' && left.has(one.midi))
    .map((one) => one.cents - (left.get(one.midi) ?? 0))
    .sort((a, b) => a - b);
  const median = changes[changes.length >> 1] ?? Number.NaN;
  const rms = Math.sqrt(changes.reduce((sum, cents) => sum + cents ** 2, 0) / changes.length);
  return { median, rms, point };
}

describe('an instrument’s forecast', () => {
  const cases = [1, 2, 3, 4, 5, 6].map(foretoldAgainstFound);

  it('holds what the next visit finds within three standard uncertainties', () => {
    for (const { median, point } of cases)
      expect(Math.abs(median - point.medianCents)).toBeLessThan(3 * point.medianUncertaintyCents);
  });

  it('is not idle: it is nearer to what was found than “no change” is', () => {
    const off = cases.reduce((sum, { median, point }) => sum + Math.abs(median - point.medianCents), 0);
    const still = cases.reduce((sum, { median }) => sum + Math.abs(median), 0);
    expect(off).toBeLessThan(0.6 * still);
  });

  it('takes in the found departure between its lower and upper course in most cases', () => {
    const inside = cases.filter(({ rms, point }) => rms > 0.7 * point.rmsCents.low && rms < 1.3 * point.rmsCents.high);
    expect(inside.length).toBeGreaterThanOrEqual(4);
  });
});

it('there is no forecast for an instrument that nobody left in a known state', () => {
  const request = {
    readings: [],
    events: [],
    instrument: INSTRUMENT,
    thresholdCentsPerYear: 1,
    random: seededNormal(1),
  };
  expect(forecastOfDrift(analyseDrift(request), { readings: [], instrument: INSTRUMENT }, 5)).toEqual({
    known: false,
    reason: 'never-left',
  });
});
