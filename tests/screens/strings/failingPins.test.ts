import { expect, it } from 'vitest';
import type { InstrumentId, ScheduleId, TorqueId } from '../../../src/piano/ids.ts';
import type { StringingSchedule, TorqueReading } from '../../../src/piano/stringingRecords.ts';
import { failingPins } from '../../../src/screens/strings/failingPins.ts';
import { visitOn } from './stringRecordsOf.ts';

const visits = [visitOn('2024-03-01'), visitOn('2025-03-01')];
const row = {
  midi: 69,
  stringCount: 3,
  // 0.991 mm of steel at 396 mm and 440 Hz pulls about 711 N, so 2.9 N·m at a pin of 7.163 mm.
  speakingLengthMm: 396,
  wireDiameterMm: 0.991,
  coreDiameterMm: null,
  wrap: null,
  wireGrade: null,
  bridge: null,
  interpolated: [],
};
const schedule: StringingSchedule = {
  id: 'sch' as ScheduleId,
  instrumentId: 'i' as InstrumentId,
  name: '',
  kind: 'as it is',
  pitchStandardHz: 440,
  rows: [row],
  remark: '',
};

function torque(torqueNm: number, direction: TorqueReading['direction'], visitIndex = 1, midi = 69): TorqueReading {
  const visitId = visits[visitIndex]!.id;
  return {
    id: 't' as TorqueId,
    instrumentId: 'i' as InstrumentId,
    visitId,
    midi,
    stringPosition: 2,
    torqueNm,
    direction,
    remark: '',
  };
}

const fails = (torques: TorqueReading[], schedules = [schedule]) =>
  [...failingPins({ instrument: { tuningPinDiameterMm: 7.163 }, visits, torques, schedules })].length === 1;

it('a pin fails where its own friction is below its string’s pull, whichever way it was turned', () => {
  expect(fails([torque(2.5, 'not noted')])).toBe(true);
  expect(fails([torque(3.5, 'not noted')])).toBe(false);
  expect(fails([torque(5, 'sharpwards')])).toBe(true);
  expect(fails([torque(6.5, 'sharpwards')])).toBe(false);
  expect(fails([torque(0.5, 'flatwards')])).toBe(false);
  expect(fails([torque(5, 'sharpwards'), torque(0.5, 'flatwards')])).toBe(true);
});

it('the newest visit counts, and nothing is said where the pull is not known', () => {
  expect(fails([torque(2, 'not noted', 0), torque(6, 'not noted', 1)])).toBe(false);
  expect(fails([torque(2, 'not noted', 1, 70)])).toBe(false);
  expect(fails([torque(2, 'not noted')], [{ ...schedule, kind: 'planned' }])).toBe(false);
  expect(fails([torque(2, 'not noted')], [])).toBe(false);
});
