/** Schedules that are begun: of what is on the instrument, and plans from another schedule. */
import type { ScheduleId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { ScheduleRow, StringingSchedule } from '../../piano/stringingRecords.ts';
import { emptySchedule } from '../../stringing/schedule/scheduleRows.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.schedules;

/** What is usual where nobody said (ISO 16). */
const USUAL_PITCH_HZ = 440;

export function scheduleAsItIs(
  id: ScheduleId,
  instrument: Instrument,
  rows: readonly ScheduleRow[] = emptySchedule(instrument.compass),
): StringingSchedule {
  return {
    id,
    instrumentId: instrument.id,
    name: words.asItIsName,
    kind: 'as it is',
    pitchStandardHz: USUAL_PITCH_HZ,
    rows,
    remark: '',
  };
}

type Content = Pick<StringingSchedule, 'instrumentId' | 'rows' | 'pitchStandardHz'>;

/** A copy, under the first number that no other plan bears. */
export function planOf(id: ScheduleId, content: Content, others: readonly StringingSchedule[]): StringingSchedule {
  const taken = new Set(others.map(({ name }) => name));
  let number = 1;
  while (taken.has(words.planName(number))) number += 1;
  const { instrumentId, rows, pitchStandardHz } = content;
  return { id, instrumentId, name: words.planName(number), kind: 'planned', pitchStandardHz, rows, remark: '' };
}

/** Rows of a file take the place of the same notes' rows; notes that it does not name stay. */
export function withRowsOfFile(rows: readonly ScheduleRow[], ofFile: readonly ScheduleRow[]): ScheduleRow[] {
  const byNote = new Map([...rows, ...ofFile].map((row) => [row.midi, row]));
  return [...byNote.values()].sort((a, b) => a.midi - b.midi);
}

/** A pitch standard that somebody typed; undefined outside what pianos were tuned to. */
export function typedPitch(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.'));
  return text.trim() !== '' && value >= LOWEST_PITCH_HZ && value <= HIGHEST_PITCH_HZ ? value : undefined;
}

/** Chosen with room to spare: A4 stood between about 390 and 460 Hz over three centuries (common knowledge). */
const LOWEST_PITCH_HZ = 380;
const HIGHEST_PITCH_HZ = 480;
