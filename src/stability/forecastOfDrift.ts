/** From the judgement of an instrument's years to what the forecast needs. */

import { medianOf } from '../piano/robustStatistics.ts';
import type { Drift } from './drift/analyseDrift.ts';
import { USUAL_BASS_BRIDGE_TOP_MIDI } from './drift/history.ts';
import { usualResponse } from './drift/humidityResponse.ts';
import type { Forecast, ForecastRequest, ForecastString } from './forecast.ts';
import { forecastOf } from './forecast.ts';
import { type RoomClimate, roomClimate } from './forecastClimate.ts';
import type { InstrumentHistory } from './historyOfRecords.ts';

export type InstrumentForecast =
  | {
      readonly known: true;
      readonly forecast: Forecast;
      readonly climate: RoomClimate;
      /** Whether the strings' answer to humidity was learnt from this instrument, or is the usual one. */
      readonly responseBasis: 'record' | 'assumption';
      /** Settling at its present rate is in it. */
      readonly includesSettling: boolean;
      readonly request: ForecastRequest;
    }
  /** Nobody left it in a known state. */
  | { readonly known: false; readonly reason: 'never-left' };

/** Root mean square of the departures at which a piano is due. Chosen: an owner hears 5 cents between a unison's register and its octave. */
export const USUAL_LIMIT_CENTS = 5;

export function forecastOfDrift(
  drift: Drift,
  history: Pick<InstrumentHistory, 'readings' | 'instrument'>,
  limitCents: number,
): InstrumentForecast {
  const left = history.readings.filter((reading) => reading.stage === 'as-left').at(-1);
  if (!left || drift.detail.strings.length === 0) return { known: false, reason: 'never-left' };
  const climate = roomClimate(humidityReadings(history));
  const request: ForecastRequest = {
    strings: stringsOf(drift, history.instrument.bassBridgeTopMidi ?? USUAL_BASS_BRIDGE_TOP_MIDI),
    leftOn: left.visitedOn,
    leftHumidityPct: left.humidityPct,
    climate,
    common: commonCourse(drift),
    strayCentsPerRootYear: strayOf(drift),
    limitCents,
  };
  return {
    known: true,
    forecast: forecastOf(request),
    climate,
    responseBasis: drift.detail.isHumidityKnown ? 'record' : 'assumption',
    includesSettling: drift.settling !== null,
    request,
  };
}

function humidityReadings({ readings }: Pick<InstrumentHistory, 'readings'>) {
  const byDate = new Map<string, number>();
  for (const { visitedOn, humidityPct } of readings) if (humidityPct !== null) byDate.set(visitedOn, humidityPct);
  return [...byDate].map(([visitedOn, humidityPct]) => ({ visitedOn, humidityPct }));
}

/** A usual response may be half as large or half as large again. Chosen. */
const USUAL_RESPONSE_DOUBT = 0.5;

function stringsOf({ detail, pins }: Drift, bassTopMidi: number): ForecastString[] {
  return detail.strings.map(({ midi, centsPerPct, standardUncertainty }, i) => {
    const usual = usualResponse(midi, bassTopMidi);
    const slip = pins[i]?.slip;
    const probability = slip?.probability ?? 0;
    return {
      centsPerPct: detail.isHumidityKnown ? centsPerPct : usual,
      responseUncertainty: detail.isHumidityKnown ? standardUncertainty : USUAL_RESPONSE_DOUBT * usual,
      slipCentsPerYear: probability * Math.min(0, slip?.centsPerYear ?? 0),
      slipUncertainty: probability * (slip?.standardUncertainty ?? 0),
    };
  });
}

/** Beforehand a piano drifts by up to a cent or so a year, and temperature and clock move it from visit to visit. Chosen. */
const USUAL_COURSE_CENTS = 1;
const USUAL_SCATTER_CENTS = 1.5;
/** How well the settling that remains is known, as a share of it. Chosen. */
const SETTLING_DOUBT = 0.3;

/** The steady rate by least squares through the origin, leaning on nought; the scatter leans on the usual one. */
function commonCourse({ detail, intervals, settling }: Drift): ForecastRequest['common'] {
  const rows = intervals.flatMap(({ years, hasBaseline }, k) =>
    hasBaseline ? [{ years, cents: detail.commonCents[k] ?? 0 }] : [],
  );
  const information = rows.reduce(
    (sum, { years }) => sum + (years / USUAL_SCATTER_CENTS) ** 2,
    USUAL_COURSE_CENTS ** -2,
  );
  const top = rows.reduce((sum, { years, cents }) => sum + (years * cents) / USUAL_SCATTER_CENTS ** 2, 0);
  const rate = top / information;
  const squares = rows.reduce((sum, { years, cents }) => sum + (cents - rate * years) ** 2, 0);
  const scatterCents = Math.sqrt((squares + 3 * USUAL_SCATTER_CENTS ** 2) / (rows.length + 3));
  if (!settling) return { centsPerYear: rate, standardUncertainty: 1 / Math.sqrt(information), scatterCents };
  const remaining = settling.remainingCentsPerYear;
  return {
    centsPerYear: remaining,
    standardUncertainty: Math.max(0.5, SETTLING_DOUBT * Math.abs(remaining)),
    scatterCents: USUAL_SCATTER_CENTS,
  };
}

/** What a string does by itself in a year where nothing is known of it. Chosen. */
const USUAL_STRAY_CENTS = 0.8;

/** Scatter of the strings' own changes beyond what reading them costs, for a year. */
function strayOf({ detail, intervals }: Drift): number {
  const variances = detail.changes.flatMap((change) => {
    const years = intervals[change.intervalIndex]?.years ?? 0;
    const excess = change.standardUncertaintyCents ** 2 - change.readingUncertaintyCents ** 2;
    return years > 0.1 ? [Math.max(0, excess) / years] : [];
  });
  return variances.length < 20 ? USUAL_STRAY_CENTS : Math.sqrt(medianOf(variances));
}
