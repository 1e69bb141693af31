/** The climate of an invented room on the days of its visits: what the wood feels, and what an instrument on the wall says. */
import type { PlannedClimate, SimulationRandom } from './historyPlan.ts';

export type ClimateOnDay = {
  /** Humidity that the wood has come to, which lags behind the room's. */
  readonly woodHumidityPct: number;
  readonly temperatureC: number;
  /** What was noted; null where nobody did. */
  readonly notedHumidityPct: number | null;
  readonly notedTemperatureC: number | null;
};

const MS_PER_DAY = 86_400_000;
const DAYS_PER_YEAR = 365.25;
/** Dry in February from the heating, damp in August (the northern temperate year). */
const DRIEST_DAY_OF_YEAR = 40;
/** A spell of weather lasts about so long. Invented. */
const SPELL_DAYS = 4;
/** How long the room is followed before the first visit, so that the wood has come to rest with it. */
const LEAD_DAYS = 90;

/** One entry a date, day by day between them: a yearly swing, spells of weather, a trend; the wood follows with a first-order lag. */
export function climateOn(
  dates: readonly string[],
  climate: PlannedClimate,
  random: SimulationRandom,
): Map<string, ClimateOnDay> {
  const days = dates.map((date) => Math.round(Date.parse(date) / MS_PER_DAY));
  const firstDay = Math.min(...days) - LEAD_DAYS;
  const wanted = new Map(dates.map((date, index) => [days[index], date]));
  const found = new Map<string, ClimateOnDay>();
  const kept = Math.exp(-1 / SPELL_DAYS);
  const follows = 1 - Math.exp(-1 / Math.max(climate.lagDays, 1e-6));
  let spellPct = 0;
  let woodPct = seasonPct(climate, firstDay, firstDay);
  for (let day = firstDay; day <= Math.max(...days); day++) {
    spellPct = kept * spellPct + Math.sqrt(1 - kept * kept) * climate.dayWeatherPct * random.normal();
    const roomPct = Math.min(98, Math.max(2, seasonPct(climate, day, firstDay) + spellPct));
    woodPct += follows * (roomPct - woodPct);
    const date = wanted.get(day);
    if (date !== undefined) found.set(date, dayOf(climate, roomPct, woodPct, random));
  }
  return found;
}

function seasonPct(climate: PlannedClimate, day: number, firstDay: number): number {
  const season = Math.cos((2 * Math.PI * (day - DRIEST_DAY_OF_YEAR)) / DAYS_PER_YEAR);
  const years = (day - firstDay) / DAYS_PER_YEAR;
  return climate.meanHumidityPct - climate.swingPct * season + climate.dryingPctPerYear * years;
}

function dayOf(climate: PlannedClimate, roomPct: number, woodPct: number, random: SimulationRandom): ClimateOnDay {
  const temperatureC = climate.temperatureC + climate.temperatureScatterC * random.normal();
  const readPct = roomPct + climate.hygrometerErrorPct * random.normal();
  const isNoted = random.uniform() >= climate.unnotedShare;
  return {
    woodHumidityPct: woodPct,
    temperatureC,
    notedHumidityPct: isNoted ? Math.min(100, Math.max(0, Math.round(readPct))) : null,
    notedTemperatureC: isNoted ? Math.round(2 * temperatureC) / 2 : null,
  };
}
