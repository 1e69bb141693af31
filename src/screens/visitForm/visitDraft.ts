/** A visit while it is being typed, and what the fields mean once all of them make sense. */
import { shownTemperature, shownUnits, typedTemperatureC } from '../../piano/formatUnits.ts';
import type { Visit } from '../../piano/instrument.ts';
import { readFigureWithin, writeFigure } from '../../piano/readFigure.ts';

export type PitchChoice = '440' | '435' | 'other';

export type VisitDraft = {
  readonly visitedOn: string;
  readonly visitedBy: string;
  readonly humidity: string;
  readonly temperature: string;
  readonly pitchChoice: PitchChoice;
  readonly pitchHz: string;
  readonly remark: string;
};

export type VisitFault =
  | 'date-missing'
  | 'humidity-not-a-number'
  | 'temperature-not-a-number'
  | 'temperature-not-in-fahrenheit'
  | 'pitch-not-a-number';
export type VisitFaults = Partial<Record<keyof VisitDraft, VisitFault>>;
export type DraftVisit = Omit<Visit, 'id' | 'instrumentId'>;
export type ReadVisit =
  | { readonly isSound: true; readonly visit: DraftVisit }
  | { readonly isSound: false; readonly faults: VisitFaults };

export function emptyVisitDraft(today: string, before: Visit | null): VisitDraft {
  const pitchHz = before?.pitchStandardHz ?? 440;
  const visitedBy = before?.visitedBy ?? '';
  return { visitedOn: today, visitedBy, humidity: '', temperature: '', ...pitchFields(pitchHz), remark: '' };
}

export function visitToDraft(visit: Visit): VisitDraft {
  return {
    visitedOn: visit.visitedOn,
    visitedBy: visit.visitedBy,
    humidity: visit.humidityPct === null ? '' : writeFigure(visit.humidityPct),
    temperature: visit.temperatureC === null ? '' : temperatureText(visit.temperatureC),
    ...pitchFields(visit.pitchStandardHz),
    remark: visit.remark,
  };
}

function pitchFields(pitchStandardHz: number): Pick<VisitDraft, 'pitchChoice' | 'pitchHz'> {
  const choice = String(pitchStandardHz);
  const pitchChoice = choice === '440' || choice === '435' ? choice : 'other';
  return { pitchHz: writeFigure(pitchStandardHz), pitchChoice };
}

/** In the unit that is typed, to a hundredth of a degree. */
function temperatureText(temperatureC: number): string {
  return writeFigure(Math.round(100 * shownTemperature(temperatureC)) / 100);
}

/** A4 of pianos lies well inside this, from the lowest old pitches to the highest. */
const PITCH_RANGE_HZ = { least: 380, most: 480 };

/** The visit that the fields describe, or what is wrong with which field. */
export function readVisit(draft: VisitDraft): ReadVisit {
  const faults: VisitFaults = {};
  if (!/^\d{4}-\d{2}-\d{2}$/.test(draft.visitedOn)) faults.visitedOn = 'date-missing';
  const humidityPct = readFigureWithin(draft.humidity, 0, 100);
  if (humidityPct === undefined) faults.humidity = 'humidity-not-a-number';
  const temperatureC = readTemperature(draft.temperature, faults);
  const pitchText = draft.pitchChoice === 'other' ? draft.pitchHz : draft.pitchChoice;
  const pitchStandardHz = readFigureWithin(pitchText, PITCH_RANGE_HZ.least, PITCH_RANGE_HZ.most) ?? undefined;
  if (pitchStandardHz === undefined) faults.pitchHz = 'pitch-not-a-number';
  if (humidityPct === undefined || temperatureC === undefined || pitchStandardHz === undefined || faults.visitedOn)
    return { isSound: false, faults };
  const [visitedBy, remark] = [draft.visitedBy.trim(), draft.remark.trim()];
  return {
    isSound: true,
    visit: { visitedOn: draft.visitedOn, visitedBy, humidityPct, temperatureC, pitchStandardHz, remark },
  };
}

/** In the unit that is typed; the limits are those of the records in it. */
function readTemperature(text: string, faults: VisitFaults): number | null | undefined {
  const isFahrenheit = shownUnits().temperature === '°F';
  const typed = isFahrenheit ? readFigureWithin(text, -22, 140) : readFigureWithin(text, -30, 60);
  if (typed === undefined)
    faults.temperature = isFahrenheit ? 'temperature-not-in-fahrenheit' : 'temperature-not-a-number';
  return typed == null ? typed : typedTemperatureC(typed);
}
