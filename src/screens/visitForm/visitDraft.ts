/** A visit while it is being typed, and what the fields mean once all of them make sense. */
import type { Visit } from '../../piano/instrument.ts';

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

export type VisitFault = 'date-missing' | 'humidity-not-a-number' | 'temperature-not-a-number' | 'pitch-not-a-number';
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
    humidity: visit.humidityPct === null ? '' : String(visit.humidityPct),
    temperature: visit.temperatureC === null ? '' : String(visit.temperatureC),
    ...pitchFields(visit.pitchStandardHz),
    remark: visit.remark,
  };
}

function pitchFields(pitchStandardHz: number): Pick<VisitDraft, 'pitchChoice' | 'pitchHz'> {
  const pitchHz = String(pitchStandardHz);
  return { pitchHz, pitchChoice: pitchHz === '440' || pitchHz === '435' ? pitchHz : 'other' };
}

/** A4 of pianos lies well inside this, from the lowest old pitches to the highest. */
const PITCH_RANGE_HZ = { least: 380, most: 480 };

/** The visit that the fields describe, or what is wrong with which field. */
export function readVisit(draft: VisitDraft): ReadVisit {
  const faults: VisitFaults = {};
  if (!/^\d{4}-\d{2}-\d{2}$/.test(draft.visitedOn)) faults.visitedOn = 'date-missing';
  const humidityPct = readNumber(draft.humidity, 0, 100);
  if (humidityPct === undefined) faults.humidity = 'humidity-not-a-number';
  const temperatureC = readNumber(draft.temperature, -30, 60);
  if (temperatureC === undefined) faults.temperature = 'temperature-not-a-number';
  const pitchText = draft.pitchChoice === 'other' ? draft.pitchHz : draft.pitchChoice;
  const pitchStandardHz = readNumber(pitchText, PITCH_RANGE_HZ.least, PITCH_RANGE_HZ.most) ?? undefined;
  if (pitchStandardHz === undefined) faults.pitchHz = 'pitch-not-a-number';
  if (humidityPct === undefined || temperatureC === undefined || pitchStandardHz === undefined || faults.visitedOn)
    return { isSound: false, faults };
  const [visitedBy, remark] = [draft.visitedBy.trim(), draft.remark.trim()];
  return {
    isSound: true,
    visit: { visitedOn: draft.visitedOn, visitedBy, humidityPct, temperatureC, pitchStandardHz, remark },
  };
}

/** With point or comma. Null for an empty field, undefined for what is no number in the range. */
function readNumber(text: string, least: number, most: number): number | null | undefined {
  const tidy = text.trim().replace(',', '.').replace('−', '-');
  if (tidy === '') return null;
  if (!/^-?\d+(\.\d+)?$/.test(tidy)) return undefined;
  const value = Number(tidy);
  return value >= least && value <= most ? value : undefined;
}
