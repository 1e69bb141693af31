/** Visit after visit of an invented piano: its strings move, are read, are tuned, are read again. */
import { notesOf } from '../../piano/compass.ts';
import type { Instrument, Survey, SurveyStage, Take, Visit } from '../../piano/instrument.ts';
import type { RecordSet } from '../recordSet.ts';
import { inventedReading } from './inventedReading.ts';
import { type InventedString, inventedString, inventInharmonicity } from './inventedString.ts';
import type { InstrumentPlan } from './plans.ts';
import type { SeededNumbers } from './seededNumbers.ts';
import { seasonHumidityPct, stringMotionCents } from './stringMotion.ts';

/** How well a tuner leaves a string set, in cents. */
const SETTING_SCATTER_CENTS = 0.5;
const PITCH_STANDARD_HZ = 440;
const SECONDS_PER_NOTE = 2.9;
const PEOPLE = ['Ida', 'Jonas', 'Marit'] as const;
const DAYS_PER_YEAR = 365.25;
const MS_PER_DAY = 86_400_000;

export function inventVisits(
  plan: InstrumentPlan,
  instrument: Instrument,
  numbers: SeededNumbers,
): Pick<RecordSet, 'visits' | 'surveys' | 'takes'> {
  const piano = startingPiano(plan, numbers);
  const visits: Visit[] = [];
  const surveys: Survey[] = [];
  const takes: Take[] = [];
  let before: { readonly years: number; readonly humidityPct: number } | undefined;
  for (const day of visitDays(plan, numbers)) {
    const humidityPct = seasonHumidityPct(plan, day.shareOfYear) + numbers.normal(1.5);
    if (before) {
      const humidityChangePct = humidityPct - before.humidityPct;
      move(plan, piano, { fromYears: before.years, toYears: day.years, humidityChangePct }, numbers);
    }
    const visit = inventedVisit(plan, instrument, { date: day.date, humidityPct }, numbers);
    visits.push(visit);
    for (const stage of ['as-found', 'as-left'] as const) {
      if (stage === 'as-left') tune(piano, numbers);
      const survey = inventedSurvey(visit, stage, piano.length, numbers);
      surveys.push(survey);
      takes.push(...takesOf(survey, piano, numbers));
    }
    before = { years: day.years, humidityPct };
  }
  return { visits, surveys, takes };
}

/** A string and how far it stands from where a tuner would set it. */
type Standing = { readonly string: InventedString; offsetCents: number };

/** Before the first visit the piano had been left alone for a year or two. */
function startingPiano(plan: InstrumentPlan, numbers: SeededNumbers): Standing[] {
  const inharmonicityAt = inventInharmonicity(plan, numbers);
  const flat = plan.settling ? -30 : -6;
  return notesOf(plan.instrument.compass).map((midi) => ({
    string: inventedString(plan, midi, inharmonicityAt(midi), numbers),
    offsetCents: flat + numbers.normal(2.5),
  }));
}

function move(
  plan: InstrumentPlan,
  piano: readonly Standing[],
  stretch: Parameters<typeof stringMotionCents>[2],
  numbers: SeededNumbers,
): void {
  for (const standing of piano) standing.offsetCents += stringMotionCents(plan, standing.string.midi, stretch, numbers);
}

function tune(piano: readonly Standing[], numbers: SeededNumbers): void {
  for (const standing of piano) standing.offsetCents = numbers.normal(SETTING_SCATTER_CENTS);
}

type VisitDay = { readonly date: string; readonly years: number; readonly shareOfYear: number };

function visitDays(plan: InstrumentPlan, numbers: SeededNumbers): VisitDay[] {
  const first = Date.parse(plan.firstVisitOn) / MS_PER_DAY;
  return plan.visitYears.map((years, index) => {
    const day = first + Math.round(years * DAYS_PER_YEAR + (index === 0 ? 0 : numbers.between(-6, 6)));
    const date = new Date(day * MS_PER_DAY).toISOString().slice(0, 10);
    const newYear = Date.parse(`${date.slice(0, 4)}-01-01`) / MS_PER_DAY;
    return { date, years: (day - first) / DAYS_PER_YEAR, shareOfYear: (day - newYear) / DAYS_PER_YEAR };
  });
}

function inventedVisit(
  plan: InstrumentPlan,
  instrument: Instrument,
  day: { readonly date: string; readonly humidityPct: number },
  numbers: SeededNumbers,
): Visit {
  return {
    id: numbers.id(),
    instrumentId: instrument.id,
    visitedOn: day.date,
    visitedBy: numbers.oneOf(PEOPLE),
    humidityPct: Math.round(day.humidityPct),
    temperatureC: Math.round(2 * numbers.between(18.5, 22.5)) / 2,
    pitchStandardHz: PITCH_STANDARD_HZ,
    remark: numbers.oneOf(plan.remarks),
  };
}

function inventedSurvey(visit: Visit, stage: SurveyStage, noteCount: number, numbers: SeededNumbers): Survey {
  const startMs = Date.parse(`${visit.visitedOn}T${stage === 'as-found' ? '09:10' : '11:40'}:00Z`);
  return {
    id: numbers.id(),
    visitId: visit.id,
    instrumentId: visit.instrumentId,
    stage,
    startedAt: new Date(startMs).toISOString(),
    finishedAt: new Date(startMs + 1000 * SECONDS_PER_NOTE * (noteCount + 1)).toISOString(),
    deviceLabel: 'Invented microphone',
    sampleRateHz: 48_000,
    strings: 'centre strings',
  };
}

function takesOf(survey: Survey, piano: readonly Standing[], numbers: SeededNumbers): Take[] {
  const startMs = Date.parse(survey.startedAt);
  return piano.map(({ string, offsetCents }, index) => {
    const onsetS = 1 + index * SECONDS_PER_NOTE + numbers.between(0, 0.4);
    const partial1Hz = string.targetHz * 2 ** (offsetCents / 1200);
    const reading = inventedReading(string, { partial1Hz, onsetS, pitchStandardHz: PITCH_STANDARD_HZ }, numbers);
    return {
      id: numbers.id(),
      surveyId: survey.id,
      visitId: survey.visitId,
      instrumentId: survey.instrumentId,
      midi: string.midi,
      stringPosition: reading.stringPosition,
      recordedAt: new Date(startMs + Math.round(1000 * onsetS)).toISOString(),
      isKept: true,
      reading,
    };
  });
}
