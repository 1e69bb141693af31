/** What happened when: visits, work, torque, trials at the bridge, decisions. */
import {
  formatCents,
  formatHumidity,
  formatNoteRange,
  formatNumber,
  formatPitchStandard,
  formatTemperature,
} from '../piano/format.ts';
import type { InstrumentEvent, SurveyStage, Visit } from '../piano/instrument.ts';
import type { BridgeTrial, StringDecision, TorqueReading } from '../piano/stringingRecords.ts';
import type { FullRecords } from './fullRecords.ts';
import { element, type PageElement } from './pageTree.ts';
import { type ReportColumn, scrollingTable } from './reportTable.ts';
import { stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

function tableSection<Row>(
  title: string,
  columns: readonly ReportColumn<Row>[],
  rows: readonly Row[],
): PageElement | null {
  if (rows.length === 0) return null;
  const table = scrollingTable(title, columns, rows, null);
  return element('section', {}, element('h2', {}, title), table);
}

export function visitSection(records: FullRecords, words: ReportWords): PageElement | null {
  const { long } = words;
  const stageCount = (visit: Visit, stage: SurveyStage) => {
    const surveys = records.surveys.filter((survey) => survey.visitId === visit.id && survey.stage === stage);
    const count = records.takes.filter((take) => surveys.some(({ id }) => id === take.surveyId)).length;
    return surveys.length === 0 ? '' : String(count);
  };
  const movement = (visit: Visit) =>
    records.drift.intervals.find(({ toDate }) => toDate === visit.visitedOn)?.medianCents ?? null;
  const columns: ReportColumn<Visit>[] = [
    { title: long.date, isRowHeader: true, cell: ({ visitedOn }) => visitedOn },
    { title: long.by, cell: ({ visitedBy }) => visitedBy },
    { title: long.humidity, isNumber: true, cell: ({ humidityPct }) => formatHumidity(humidityPct) },
    { title: long.temperature, isNumber: true, cell: ({ temperatureC }) => formatTemperature(temperatureC) },
    { title: long.pitchStandard, cell: ({ pitchStandardHz }) => formatPitchStandard(pitchStandardHz) },
    { title: long.asFound, isNumber: true, cell: (visit) => stageCount(visit, 'as-found') },
    { title: long.asLeft, isNumber: true, cell: (visit) => stageCount(visit, 'as-left') },
    { title: long.movement, isNumber: true, cell: (visit) => formatCents(movement(visit)) },
    { title: long.remark, cell: ({ remark }) => remark },
  ];
  return tableSection(long.visits, columns, records.visits);
}

export function eventSection({ events }: FullRecords, words: ReportWords): PageElement | null {
  const { long, work } = words;
  const columns: ReportColumn<InstrumentEvent>[] = [
    { title: long.date, isRowHeader: true, cell: ({ happenedOn }) => happenedOn },
    { title: long.what, cell: ({ kind }) => work.kinds[kind] },
    {
      title: long.notes,
      cell: ({ fromMidi, toMidi }) =>
        fromMidi === null || toMidi === null ? work.whole : formatNoteRange(fromMidi, toMidi),
    },
    { title: long.remark, cell: ({ remark }) => remark },
  ];
  return tableSection(work.title, columns, events);
}

export function torqueSection({ torques, visits }: FullRecords, words: ReportWords): PageElement | null {
  const { long } = words;
  const dates = new Map(visits.map(({ id, visitedOn }) => [id, visitedOn]));
  const columns: ReportColumn<TorqueReading>[] = [
    {
      title: long.date,
      isRowHeader: true,
      cell: ({ visitId }) => dates.get(visitId) ?? '',
    },
    { title: long.string, cell: (torque) => stringName(torque, words) },
    { title: long.torque, isNumber: true, cell: ({ torqueNm }) => formatNumber(torqueNm, 1) },
    { title: long.direction, cell: ({ direction }) => long.directions[direction] },
    { title: long.remark, cell: ({ remark }) => remark },
  ];
  const inOrder = [...torques].sort(
    (a, b) =>
      compareText(dates.get(a.visitId) ?? '', dates.get(b.visitId) ?? '') ||
      a.midi - b.midi ||
      a.stringPosition - b.stringPosition,
  );
  return tableSection(long.torques, columns, inOrder);
}

export function trialSection({ trials }: FullRecords, words: ReportWords): PageElement | null {
  const { long } = words;
  const columns: ReportColumn<BridgeTrial>[] = [
    { title: long.date, isRowHeader: true, cell: ({ triedAt }) => triedAt.slice(0, 10) },
    { title: long.string, cell: (trial) => stringName(trial, words) },
    { title: long.what, cell: ({ kind }) => long.trialKinds[kind] },
    {
      title: long.takes,
      cell: ({ takesBefore, takesAfter }) => long.beforeAfter(takesBefore.length, takesAfter.length),
    },
    { title: long.remark, cell: ({ remark }) => remark },
  ];
  return tableSection(long.trials, columns, trials);
}

export function decisionSection({ decisions }: FullRecords, words: ReportWords): PageElement | null {
  const { long } = words;
  const columns: ReportColumn<StringDecision>[] = [
    { title: long.decidedOn, isRowHeader: true, cell: ({ decidedOn }) => decidedOn },
    { title: long.string, cell: (decision) => stringName(decision, words) },
    { title: long.decision, cell: ({ choice }) => words.advice.decisions[choice] },
    { title: long.reason, cell: ({ reason }) => reason },
    { title: long.doneOn, cell: ({ doneOn }) => (doneOn === null ? long.notYet : doneOn) },
  ];
  return tableSection(long.decisions, columns, decisions);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
