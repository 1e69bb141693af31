import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sampleRecordFiles } from '../reference/sampleRecords.ts';
import { runForJson } from './runStillpin.ts';

const folder = new URL('../../sample-records/', import.meta.url);
const path = (name: string): string => new URL(name, folder).pathname;

describe('the sample records', () => {
  it('are what the recipe makes', () => {
    expect(sampleRecordFiles().map(({ name }) => name)).toContain('history.csv');
    for (const { name, text } of sampleRecordFiles()) expect(readFileSync(path(name), 'utf8')).toBe(text);
  });

  it('are judged as what they were made to be: a zone above a strut that fails, faster each year', () => {
    const options = ['--instrument', path('instrument.json'), '--events', path('events.csv')];
    const { status, json } = runForJson(['drift', path('history.csv'), ...options]);
    expect(status).toBe(0);
    const { zones, verdict, settling, pins } = json;
    expect(zones).toMatchObject([{ fromNote: 'C5', toNote: 'A#5', accelerating: true }]);
    expect(verdict.state).toBe('giving way');
    expect(settling.since).toBe('2015-11-10');
    const flagged = pins.filter((pin: { flagged: boolean }) => pin.flagged).map((pin: { note: string }) => pin.note);
    expect(flagged.every((note: string) => /^(C|C#|D|D#|E|F|F#|G|G#|A|A#)5$/.test(note))).toBe(true);
  });
});
