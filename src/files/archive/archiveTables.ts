/** All tables of the archive, each after the ones that it refers to. */
import {
  decisions,
  gone,
  photographs,
  rivals,
  scheduleNotes,
  schedules,
  torque,
  trials,
  unattached,
  wireGrades,
  wireStrengths,
} from './benchTables.ts';
import { calibrations, events, instruments, surveys, visits } from './instrumentTables.ts';
import { beats, components, earlierReadings, partials, readings, sounds } from './readingTables.ts';
import type { TableSpec } from './tableSpec.ts';

export const ARCHIVE_TABLES: readonly TableSpec[] = [
  instruments,
  events,
  visits,
  surveys,
  calibrations,
  readings,
  earlierReadings,
  partials,
  beats,
  components,
  sounds,
  torque,
  decisions,
  trials,
  schedules,
  scheduleNotes,
  wireGrades,
  wireStrengths,
  photographs,
  rivals,
  gone,
  unattached,
];

/** Raised when a program that knows only older archives would misread a newer one. */
export const ARCHIVE_VERSION = 1;
