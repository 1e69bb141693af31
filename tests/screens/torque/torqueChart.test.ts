import { describe, expect, it } from 'vitest';
import type { ScheduleRow, StringingSchedule } from '../../../src/piano/stringingRecords.ts';
import { pinLoads, presentSchedule, pullMultiple } from '../../../src/screens/torque/pinLoads.ts';
import { torqueBandsOf, torqueSeries } from '../../../src/screens/torque/torqueChart.ts';
import { ratioWords } from '../../../src/screens/torque/torqueColumns.ts';
import type { PinTorque } from '../../../src/stability/torquePins.ts';
import { texts } from '../../../src/ui/texts.ts';

const row = (midi: number, fields: Partial<ScheduleRow> = {}): ScheduleRow => ({
  midi,
  stringCount: 3,
  speakingLengthMm: 181,
  wireDiameterMm: 0.925,
  coreDiameterMm: null,
  wrap: null,
  wireGrade: null,
  bridge: null,
  interpolated: [],
  ...fields,
});
const schedule = (kind: StringingSchedule['kind'], rows: ScheduleRow[]) =>
  ({ kind, rows, pitchStandardHz: 440 }) as unknown as StringingSchedule;
const pin = (midi: number, torqueNm: number): PinTorque => ({ midi, stringPosition: 2, torqueNm, read: 'not noted' });

const present = schedule('as it is', [row(84), row(85, { speakingLengthMm: null })]);
const loads = pinLoads({ tuningPinDiameterMm: 7.16 }, present);

describe('pinLoads', () => {
  it('rests on the schedule of what is on the instrument, never on a plan', () => {
    expect(presentSchedule([schedule('planned', []), present])).toBe(present);
    expect(presentSchedule([schedule('planned', [])])).toBeNull();
  });

  it('gives a torque as a multiple of the string’s pull, or says why not', () => {
    // 757.08 N at a pin of 7.16 mm with wire of 0.925 mm pulls with 3.0605 N·m.
    expect(pullMultiple(6.121, loads.of(84))).toBeCloseTo(2, 3);
    expect(ratioWords(6.121, 84, loads)).toBe('2.0\u2009×');
    expect(ratioWords(6.121, 85, loads)).toBe(texts.torque.load.unknown['length-unknown']);
    expect(ratioWords(6.121, 90, loads)).toBe(texts.torque.load.unknown['no-row']);
  });

  it('says whether the pins were measured', () => {
    expect(loads).toMatchObject({ hasSchedule: true, isDiameterMeasured: true });
    expect(pinLoads({}, null)).toMatchObject({ hasSchedule: false, isDiameterMeasured: false, pinDiameterMm: 7.16 });
  });
});

describe('torqueSeries', () => {
  const shown = {
    pins: [pin(84, 3), pin(85, 8)],
    before: { name: 'read before', pins: [pin(84, 6)] },
    slipping: [{ midi: 84, stringPosition: 2 as const }],
  };

  it('keeps slipping pins, steady ones and an earlier reading apart by their signs', () => {
    const series = torqueSeries(shown, 'torque', loads);
    expect(series.map(({ name, shape, points }) => [name, shape, points.map(({ y }) => y)])).toEqual([
      ['read before', 'ring', [6]],
      [texts.torque.over.pins, 'disc', [8]],
      [texts.torque.over.slipping, 'triangle', [3]],
    ]);
  });

  it('leaves pins out of the multiples whose string is not known', () => {
    const drawn = torqueSeries({ ...shown, before: null }, 'ratio', loads);
    expect(drawn.flatMap(({ points }) => points.map(({ x }) => x))).toEqual([84]);
  });

  it('marks the doubtful bands by hatching, and the string’s own pull among multiples', () => {
    expect(torqueBandsOf('torque').map(({ isHatched }) => isHatched)).toEqual([true, true, false, false, false]);
    expect(torqueBandsOf('torque')[1]?.label).toBe('doubtful (30–50 in·lb)');
    expect(torqueBandsOf('ratio')).toMatchObject([{ low: 0, high: 1 }]);
  });
});
