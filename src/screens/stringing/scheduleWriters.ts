/** One writer for each schedule of this page: what it could not write yet is there again when the screen is opened again. */
import type { ScheduleId } from '../../piano/ids.ts';
import type { StringingSchedule } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { createLatestWriter, type LatestWriter } from './latestWriter.ts';

export type ScheduleWriter = LatestWriter<StringingSchedule, WriteFailure>;

const writers = new WeakMap<Records, Map<ScheduleId, ScheduleWriter>>();

export function scheduleWriter(records: Records, id: ScheduleId): ScheduleWriter {
  const ofRecords = writers.get(records) ?? new Map<ScheduleId, ScheduleWriter>();
  writers.set(records, ofRecords);
  const writer =
    ofRecords.get(id) ??
    createLatestWriter<StringingSchedule, WriteFailure>((schedule) => records.saveSchedule(schedule));
  ofRecords.set(id, writer);
  return writer;
}
