import { describe, expect, it } from 'vitest';
import { afterReport, recordingsLabel, startReading } from '../../../src/screens/recording/recordingsState.ts';
import type { RecordingsReport } from '../../../src/workers/recordingsMessages.ts';

const read = (fileName: string, noteCount: number, warnings: string[] = []): RecordingsReport => ({
  kind: 'read',
  fileName,
  sampleRateHz: 48000,
  noteCount,
  warnings,
});

describe('what has become of the recordings', () => {
  it('gathers unreadable files, silent ones and warnings by name, and ends', () => {
    const reports: RecordingsReport[] = [
      { kind: 'progress', share: 0.5 },
      { kind: 'unreadable', fileName: 'a.wav', message: 'it is empty' },
      read('b.wav', 0),
      read('c.wav', 2, ['two channels were mixed to one']),
      { kind: 'finished' },
    ];
    expect(reports.reduce(afterReport, startReading(3))).toMatchObject({
      phase: 'done',
      fileCount: 3,
      share: 1,
      unreadable: [{ fileName: 'a.wav' }],
      silent: ['b.wav'],
      warnings: [{ fileName: 'c.wav', message: 'two channels were mixed to one' }],
    });
  });

  it('keeps what it knew where the program failed', () => {
    const failed = afterReport(afterReport(startReading(1), read('b.wav', 0)), { kind: 'failed', detail: 'why' });
    expect(failed).toMatchObject({ phase: 'failed', detail: 'why', silent: ['b.wav'] });
  });
});

it('names the first files in the microphone’s place and counts the rest', () => {
  const more = (names: string, count: number) => `${names} and ${count} more`;
  expect(recordingsLabel(['a.wav'], more)).toBe('a.wav');
  expect(recordingsLabel(['a', 'b', 'c'], more)).toBe('a, b, c');
  expect(recordingsLabel(['a', 'b', 'c', 'd', 'e'], more)).toBe('a, b, c and 2 more');
});
