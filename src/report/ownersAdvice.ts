/** What is recommended, and when to come back: from the verdict, the decisions on record and the forecast, never from a text that somebody typed. */
import { formatHumidity, formatNoteRange, formatYears } from '../piano/format.ts';
import { formatMonthInFull } from '../piano/formatPlain.ts';
import type { DecisionChoice, StringDecision } from '../piano/stringingRecords.ts';
import { forecastOfDrift, USUAL_LIMIT_CENTS } from '../stability/forecastOfDrift.ts';
import type { JudgedRecords } from './judgedRecords.ts';
import { typicalResponse } from './ownersCourse.ts';
import { suspectsOf } from './ownersVerdict.ts';
import { slippingOf } from './slipping.ts';
import { fewNames, stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

export function adviceSentences(records: JudgedRecords, words: ReportWords): string[] {
  return [
    verdictAdvice(records, words),
    ...plannedWork(records.decisions, words),
    ...steadierRoom(records, words),
    ...whenToComeBack(records, words),
  ];
}

function verdictAdvice({ drift }: JudgedRecords, words: ReportWords): string {
  const { zones, pins } = slippingOf(drift);
  const concerned = [
    ...zones.map(({ fromMidi, toMidi }) => formatNoteRange(fromMidi, toMidi)),
    ...[...pins, ...(pins.length + zones.length === 0 ? suspectsOf(drift.pins) : [])].map((pin) =>
      stringName(pin, words),
    ),
  ];
  switch (drift.verdict.state) {
    case 'holding':
      return words.advice.holding;
    case 'watch':
      return words.advice.watch(fewNames(concerned, words));
    case 'giving way':
      return words.advice.givingWay(fewNames(concerned, words));
    case 'not enough evidence':
      return words.advice.notEnough;
  }
}

const WORK_CHOICES: readonly DecisionChoice[] = ['replace pin', 'replace wire', 'bridge work', 'look again'];

function plannedWork(decisions: readonly StringDecision[], words: ReportWords): string[] {
  const planned = WORK_CHOICES.flatMap((choice) => {
    const strings = decisions.filter((decision) => decision.choice === choice && decision.doneOn === null);
    const names = strings.map((string) => stringName(string, words));
    return names.length === 0 ? [] : [words.advice.plannedWork(words.advice.decisions[choice], fewNames(names, words))];
  });
  return planned.length === 0 ? [] : [words.advice.planned(planned.join('; '))];
}

/** A room whose humidity swings by more than this between visits moves every piano audibly. Chosen. */
const WIDE_SWING_PCT = 20;

function steadierRoom({ drift, visits }: JudgedRecords, { advice: words }: ReportWords): string[] {
  const values = visits.flatMap(({ humidityPct }) => (humidityPct === null ? [] : [humidityPct]));
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (values.length === 0 || high - low <= WIDE_SWING_PCT || typicalResponse(drift) === null) return [];
  return [words.steadierRoom(formatHumidity(low), formatHumidity(high))];
}

/** Nothing is said where the forecast does not say it. */
function whenToComeBack({ drift, history }: JudgedRecords, words: ReportWords): string[] {
  if (drift.verdict.state === 'not enough evidence') return [];
  const outcome = forecastOfDrift(drift, history, USUAL_LIMIT_CENTS);
  if (!outcome.known) return [];
  const { due, points } = outcome.forecast;
  const month = (date: string) => formatMonthInFull(date, words.language);
  const assumption = outcome.climate.basis === 'assumption' ? [words.advice.assumption] : [];
  const years = points.at(-1)?.years ?? 0;
  if (due.earliestOn === null) return [words.advice.comeBackLate(formatYears(years)), ...assumption];
  if (due.latestOn === null) return [words.advice.comeBackFrom(month(due.earliestOn)), ...assumption];
  const [from, to] = [month(due.earliestOn), month(due.latestOn)];
  return [from === to ? words.advice.comeBackIn(from) : words.advice.comeBackBetween(from, to), ...assumption];
}
