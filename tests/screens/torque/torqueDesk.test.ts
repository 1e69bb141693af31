import { describe, expect, it } from 'vitest';
import { COMPASS_85, COMPASS_88 } from '../../../src/piano/compass.ts';
import type { InstrumentId, TorqueId, VisitId } from '../../../src/piano/ids.ts';
import type { ScheduleRow, TorqueReading } from '../../../src/piano/stringingRecords.ts';
import type { TorqueUnit } from '../../../src/piano/torque.ts';
import { namedNotes } from '../../../src/screens/torque/namedNotes.ts';
import { firstUnread, pinRound, standingReading } from '../../../src/screens/torque/pinRound.ts';
import { readTyped } from '../../../src/screens/torque/typedTorque.ts';

describe('readTyped', () => {
  it.each<[string, TorqueUnit, number]>([
    ['8.5', 'N·m', 8.5],
    ['8,5', 'N·m', 8.5],
    [' 75 ', 'in·lb', 8.474],
    ['75 in lb', 'N·m', 8.474],
    ['75in·lb', 'N·m', 8.474],
    ['8,5 Nm', 'in·lb', 8.5],
    ['8.5 N·m', 'in·lb', 8.5],
  ])('reads %j as a torque while the wrench reads %s', (text, unit, torqueNm) => {
    const typed = readTyped(text, unit, COMPASS_88);
    expect(typed).toMatchObject({ kind: 'torque', isVeryLow: false });
    expect(typed.kind === 'torque' && typed.torqueNm).toBeCloseTo(torqueNm, 3);
  });

  it('takes a note’s name as the place to go, and nothing as nothing', () => {
    expect(readTyped('f#5', 'N·m', COMPASS_88)).toEqual({ kind: 'note', midi: 78 });
    expect(readTyped('  ', 'N·m', COMPASS_88)).toEqual({ kind: 'nothing' });
  });

  it.each<[string, string]>([
    ['tight', 'not-a-number'],
    ['8.5.1', 'not-a-number'],
    ['8.5 kg', 'not-a-number'],
    ['0', 'not-above-zero'],
    ['-3', 'not-above-zero'],
    ['75', 'too-high'],
    ['B7', 'note-outside'],
  ])('says what is wrong with %j', (text, fault) => {
    expect(readTyped(text, 'N·m', COMPASS_85)).toMatchObject({ kind: 'fault', fault });
  });

  it('takes a very low torque and says so, as it may be the other unit', () => {
    expect(readTyped('8.5', 'in·lb', COMPASS_88)).toMatchObject({ kind: 'torque', isVeryLow: true });
  });
});

describe('namedNotes', () => {
  it.each([
    ['C5 to D5, E2', [40, 72, 73, 74]],
    ['E2, E2; C5–D5', [40, 72, 73, 74]],
    ['c5-d5; e2', [40, 72, 73, 74]],
    ['', []],
  ])('reads %j', (text, midis) => {
    expect(namedNotes(text, COMPASS_88)).toEqual({ ok: true, midis });
  });

  it.each([
    ['C5 to', 'not-a-note', 'C5 to'],
    ['E2, 17', 'not-a-note', '17'],
    ['C8', 'outside', 'C8'],
    ['D5 to C5', 'reversed', 'D5 to C5'],
  ])('says which part of %j is wrong', (text, fault, part) => {
    expect(namedNotes(text, COMPASS_85)).toEqual({ ok: false, fault, part });
  });
});

const row = (midi: number, stringCount: number | null) => ({ midi, stringCount }) as ScheduleRow;
const reading = (midi: number, fields: Partial<TorqueReading> = {}): TorqueReading => ({
  id: `t${midi}` as TorqueId,
  instrumentId: 'i' as InstrumentId,
  visitId: 'v' as VisitId,
  midi,
  stringPosition: 2,
  torqueNm: 8,
  direction: 'not noted',
  remark: '',
  ...fields,
});

describe('pinRound', () => {
  it('asks for the centre string’s pin of each note', () => {
    expect(pinRound([60, 61], 'one', [])).toEqual([
      { midi: 60, stringPosition: 2 },
      { midi: 61, stringPosition: 2 },
    ]);
  });

  it('asks for every pin, by the schedule where it says how many, else as usual', () => {
    const positions = (midis: number[], schedule: ScheduleRow[]) =>
      pinRound(midis, 'all', schedule).map(({ midi, stringPosition }) => `${midi} ${stringPosition}`);
    expect(positions([30, 47, 48], [])).toEqual(['30 0', '47 1', '47 2', '48 1', '48 2', '48 3']);
    expect(positions([48], [row(48, 2)])).toEqual(['48 1', '48 2']);
    expect(positions([48], [row(48, null)])).toHaveLength(3);
  });

  it('knows which reading a new one takes the place of, and which pin comes first', () => {
    const round = pinRound([60, 61, 62], 'one', []);
    const readings = [reading(60), reading(61, { direction: 'flatwards' })];
    expect(standingReading(readings, { midi: 61, stringPosition: 2 }, 'flatwards')?.midi).toBe(61);
    expect(standingReading(readings, { midi: 61, stringPosition: 2 }, 'sharpwards')).toBeUndefined();
    expect(standingReading(readings, { midi: 60, stringPosition: 1 }, 'not noted')).toBeUndefined();
    expect(firstUnread(round, readings)).toBe(2);
  });
});
