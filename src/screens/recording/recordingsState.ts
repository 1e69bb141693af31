/** What has become of the recordings that are read in a microphone's place. */
import type { RecordingsReport, UnreadableRecording } from '../../workers/recordingsMessages.ts';

export type RecordingsState = {
  readonly phase: 'none' | 'reading' | 'done' | 'stopped' | 'failed';
  readonly fileCount: number;
  /** 0 to 1. */
  readonly share: number;
  readonly noteCount: number;
  readonly unreadable: readonly UnreadableRecording[];
  /** Names of files in which no note was found. */
  readonly silent: readonly string[];
  readonly warnings: readonly { readonly fileName: string; readonly message: string }[];
  /** What the program said, where it failed. */
  readonly detail: string;
};

export const NO_RECORDINGS: RecordingsState = {
  phase: 'none',
  fileCount: 0,
  share: 0,
  noteCount: 0,
  unreadable: [],
  silent: [],
  warnings: [],
  detail: '',
};

export function startReading(fileCount: number): RecordingsState {
  return { ...NO_RECORDINGS, phase: 'reading', fileCount };
}

export function afterReport(state: RecordingsState, report: RecordingsReport): RecordingsState {
  switch (report.kind) {
    case 'take':
      return report.take.outcome.found ? { ...state, noteCount: state.noteCount + 1 } : state;
    case 'progress':
      return { ...state, share: report.share };
    case 'unreadable':
      return { ...state, unreadable: [...state.unreadable, report] };
    case 'read': {
      const { fileName, noteCount } = report;
      const warnings = report.warnings.map((message) => ({ fileName, message }));
      return {
        ...state,
        silent: noteCount === 0 ? [...state.silent, fileName] : state.silent,
        warnings: [...state.warnings, ...warnings],
      };
    }
    case 'finished':
      return { ...state, phase: 'done', share: 1 };
    case 'failed':
      return { ...state, phase: 'failed', detail: report.detail };
  }
}

/** So many are named; a survey of single notes has 88 files. */
const NAMED_FILES = 3;

/** What stands in the record in a microphone's place. @param more says how many were not named */
export function recordingsLabel(names: readonly string[], more: (names: string, count: number) => string): string {
  const named = names.slice(0, NAMED_FILES).join(', ');
  return names.length > NAMED_FILES ? more(named, names.length - NAMED_FILES) : named;
}
