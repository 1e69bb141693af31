/** Sentences about cells: why one was refused, what does not fit together, what of a paste cannot be read. */
import { formatNote } from '../../piano/format.ts';
import { formatGauge, formatWireMm } from '../../piano/formatStringing.ts';
import type { CellProblem, ScheduleField } from '../../piano/wireScheduleCell.ts';
import type { ScheduleComplaint } from '../../stringing/schedule/checkSchedule.ts';
import type { PasteComplaint } from '../../stringing/schedule/pastedCells.ts';
import type { SheetRefusal } from '../../ui/sheet/sheetModel.ts';
import { texts } from '../../ui/texts.ts';
import { meaningsOf } from './gaugeTyping.ts';

const words = texts.stringing.sheet;

/** Why one cell's text is not taken. */
function problemWords(problem: CellProblem): string {
  switch (problem.kind) {
    case 'not-a-number':
      return words.problems['not-a-number'](problem.text);
    case 'not-whole':
      return words.problems['not-whole'](problem.text);
    case 'out-of-range':
      return words.problems['out-of-range'](problem.text, problem.least, problem.most);
    case 'gauge-number':
      return `${words.problems['gauge-number'](problem.text)} ${sizesOf(problem)}.`;
    case 'inches':
      return `${words.problems.inches(problem.text)} ${formatWireMm(problem.diameterMm)}.`;
    case 'not-one-of':
      return words.problems['not-one-of'](problem.text, problem.words.join(', '));
  }
}

function sizesOf({ gauges }: Extract<CellProblem, { kind: 'gauge-number' }>): string {
  return gauges.map((gauge) => `${formatWireMm(gauge.diameterMm)} (${formatGauge(gauge)})`).join(` ${words.orWord} `);
}

export function refusalOf(midi: number, field: ScheduleField, problem: CellProblem): SheetRefusal {
  return {
    message: words.refused(formatNote(midi), words.columns[field], problemWords(problem)),
    meanings: meaningsOf(problem).map(({ diameterMm, text }) => ({ label: words.use(formatWireMm(diameterMm)), text })),
  };
}

export function complaintWords(complaint: ScheduleComplaint): string {
  return words.complaints.kinds[complaint.kind];
}

export function complaintLine(complaint: ScheduleComplaint): string {
  const { midi, field } = complaint;
  return words.complaints.line(formatNote(midi), words.columns[field], complaintWords(complaint));
}

export function pasteComplaintLine({ line, cell, midi, field, problem }: PasteComplaint): string {
  const where = midi !== null && field !== null ? `${formatNote(midi)}, ${words.columns[field]}: ` : '';
  return words.paste.complaint(line, cell, where + pasteProblemWords(problem));
}

function pasteProblemWords(problem: PasteComplaint['problem']): string {
  if (problem.kind === 'unknown-note') return words.paste.problems['unknown-note'](problem.text);
  if (problem.kind === 'outside-schedule') return words.paste.problems['outside-schedule'](problem.text);
  return problemWords(problem);
}
