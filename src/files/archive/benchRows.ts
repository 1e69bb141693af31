/** The tables of the stringing desk, and of what was deleted for good. Schedules and wire grades have a table for their lines. */
import type { OwnWireGrade, StringingSchedule } from '../../piano/stringingRecords.ts';
import type { ArchiveContents, RowSource } from './archiveContents.ts';
import { decisions, gone, scheduleNotes, schedules, torque, trials, wireGrades, wireStrengths } from './benchTables.ts';
import type { TableSpec } from './tableSpec.ts';

export type TableRows = {
  readonly spec: TableSpec;
  readonly rows: RowSource<object> | undefined;
  /** The table's name in the records. */
  readonly kind: string;
};

export function* benchRowsOf(contents: ArchiveContents): Generator<TableRows> {
  const notes: object[] = [];
  const strengths: object[] = [];
  yield { spec: torque, rows: contents.torques, kind: 'torques' };
  yield { spec: decisions, rows: contents.decisions, kind: 'decisions' };
  yield { spec: trials, rows: contents.trials, kind: 'trials' };
  yield { spec: schedules, rows: withoutNotes(contents.schedules, notes), kind: 'schedules' };
  yield { spec: scheduleNotes, rows: notes, kind: 'schedules' };
  yield { spec: wireGrades, rows: withoutStrengths(contents.wireGrades, strengths), kind: 'wireGrades' };
  yield { spec: wireStrengths, rows: strengths, kind: 'wireGrades' };
  yield { spec: gone, rows: contents.gone, kind: 'gone' };
}

async function* withoutNotes(
  source: RowSource<StringingSchedule> | undefined,
  notes: object[],
): AsyncGenerator<object> {
  for await (const { rows, ...schedule } of source ?? []) {
    for (const row of rows) notes.push({ ...row, scheduleId: schedule.id });
    yield schedule;
  }
}

async function* withoutStrengths(
  source: RowSource<OwnWireGrade> | undefined,
  strengths: object[],
): AsyncGenerator<object> {
  for await (const { rows, ...grade } of source ?? []) {
    for (const row of rows) strengths.push({ ...row, wireGradeId: grade.id });
    yield grade;
  }
}
