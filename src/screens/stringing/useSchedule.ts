import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import type { Compass } from '../../piano/compass.ts';
import type { ScheduleRow, StringingSchedule } from '../../piano/stringingRecords.ts';
import { SCHEDULE_FIELDS } from '../../piano/wireScheduleCell.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { setCells } from '../../stringing/schedule/editSchedule.ts';
import { emptySchedule } from '../../stringing/schedule/scheduleRows.ts';
import { type EditHistory, startHistory, stepBack, stepForward, withStep } from '../../ui/sheet/editHistory.ts';
import type { WriterState } from './latestWriter.ts';
import { scheduleWriter } from './scheduleWriters.ts';

export type ScheduleDetails = Pick<StringingSchedule, 'name' | 'pitchStandardHz' | 'remark'>;

export type ScheduleEditor = {
  /** As it is on the screen: with what was not written yet. */
  readonly schedule: StringingSchedule;
  readonly writing: WriterState<WriteFailure>;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly setRows: (rows: readonly ScheduleRow[]) => void;
  readonly setDetails: (details: Partial<ScheduleDetails>) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly saveAgain: () => void;
};

type Rows = readonly ScheduleRow[];
type Edited = { readonly schedule: StringingSchedule; readonly history: EditHistory<Rows> };

/** Own versions that may still come back from the records, late, as somebody's change. */
const REMEMBERED_VERSIONS = 60;

/**
 * A schedule to work on. Every change is written at once, one write after another; nothing that was typed waits for a timer.
 * @param stored as the records have it now; what another page changes in it comes in as a step of its own
 */
export function useSchedule(records: Records, stored: StringingSchedule, compass: Compass): ScheduleEditor {
  const writer = scheduleWriter(records, stored.id);
  const [edited, setEdited] = useState<Edited>(() => opened(writer.unsaved() ?? stored, compass));
  const current = useRef(edited);
  const own = useRef<readonly string[]>([versionOf(stored)]);
  const writing = useSyncExternalStore(writer.onChange, writer.state);

  const show = (next: Edited) => {
    current.current = next;
    setEdited(next);
  };
  const change = (next: Edited) => {
    if (next === current.current) return;
    show(next);
    own.current = [...own.current, versionOf(next.schedule)].slice(-REMEMBERED_VERSIONS);
    writer.put(next.schedule);
  };
  const step = (history: EditHistory<Rows>) => {
    const { schedule, history: before } = current.current;
    if (history !== before) change({ schedule: { ...schedule, rows: history.present }, history });
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: asked once for each version that the records give
  useEffect(() => {
    const version = versionOf(stored);
    if (writer.unsaved() || own.current.includes(version)) return;
    own.current = [...own.current, version];
    const rows = allNotes(stored.rows, compass);
    show({ schedule: { ...stored, rows }, history: withStep(current.current.history, rows) });
  }, [stored]);
  useUnsavedGuard(writing.kind !== 'saved');

  return {
    schedule: edited.schedule,
    writing,
    canUndo: edited.history.past.length > 0,
    canRedo: edited.history.future.length > 0,
    setRows: (rows) => {
      const { history } = current.current;
      if (!isSame(rows, history.present)) step(withStep(history, rows));
    },
    setDetails: (details) => {
      const { schedule, history } = current.current;
      change({ schedule: { ...schedule, ...details }, history });
    },
    undo: () => step(stepBack(current.current.history)),
    redo: () => step(stepForward(current.current.history)),
    saveAgain: writer.tryAgain,
  };
}

function opened(schedule: StringingSchedule, compass: Compass): Edited {
  const rows = allNotes(schedule.rows, compass);
  return { schedule: { ...schedule, rows }, history: startHistory<Rows>(rows) };
}

/** Notes of the compass that the schedule does not hold stand there empty. */
function allNotes(rows: Rows, compass: Compass): Rows {
  const missing = emptySchedule(compass).filter(({ midi }) => !rows.some((row) => row.midi === midi));
  if (missing.length === 0) return rows;
  return setCells([...rows, ...missing], []);
}

/** Rows that did not change are the same objects. */
function isSame(rows: Rows, others: Rows): boolean {
  return rows.length === others.length && rows.every((row, index) => row === others[index]);
}

/** The same text for the same content, in whatever order its fields came. */
function versionOf({ name, pitchStandardHz, remark, rows }: StringingSchedule): string {
  const cells = rows.map((row) => [row.midi, ...SCHEDULE_FIELDS.map((field) => row[field]), ...row.interpolated]);
  return JSON.stringify([name, pitchStandardHz, remark, cells]);
}

/** Closing the page while something is unwritten asks first. */
function useUnsavedGuard(isUnsaved: boolean): void {
  useEffect(() => {
    if (!isUnsaved) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', ask);
    return () => window.removeEventListener('beforeunload', ask);
  }, [isUnsaved]);
}
