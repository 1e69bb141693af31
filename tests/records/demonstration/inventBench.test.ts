import { describe, expect, it } from 'vitest';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import type { RecordSet } from '../../../src/records/recordSet.ts';
import { checkRow } from '../../../src/records/rowSchemas.ts';
import { medianOf } from '../../../src/stability/changeStatistics.ts';
import { pinLoad } from '../../../src/stringing/pinLoad.ts';

const [holding, failing, settling] = demonstrationRecords(1908) as [RecordSet, RecordSet, RecordSet];

function medianTorque(
  { torques = [], visits }: RecordSet,
  visitIndex: number,
  fromMidi: number,
  toMidi: number,
): number {
  const visitId = visits.at(visitIndex)?.id;
  const own = torques.filter((row) => row.visitId === visitId && row.midi >= fromMidi && row.midi <= toMidi);
  return medianOf(own.map(({ torqueNm }) => torqueNm));
}

describe('torques of the invented pins', () => {
  it('are sound rows of visits of their instrument', () => {
    for (const { instruments, visits, torques = [] } of [holding, failing, settling]) {
      expect(torques.length).toBeGreaterThan(80);
      for (const row of torques) {
        expect(checkRow('torques', row).isSound).toBe(true);
        expect(row.instrumentId).toBe(instruments[0]?.id);
        expect(visits.map(({ id }) => id)).toContain(row.visitId);
      }
    }
  });

  it('are low in the zone that fails, lower at the last visit than at the first, and even elsewhere', () => {
    const beside = medianTorque(failing, -1, 86, 105);
    expect(medianTorque(failing, -1, 74, 81)).toBeLessThan(0.55 * beside);
    expect(medianTorque(failing, -1, 74, 81)).toBeLessThan(medianTorque(failing, 0, 74, 81));
    const [low, high] = [medianTorque(holding, -1, 60, 71), medianTorque(holding, -1, 72, 83)];
    expect(Math.abs(low - high)).toBeLessThan(1.2);
  });
});

describe('the schedule of the invented upright', () => {
  const [schedule] = failing.schedules ?? [];

  it('is a sound row that has every note of the compass once', () => {
    expect(checkRow('schedules', schedule).isSound).toBe(true);
    expect(schedule?.rows.map(({ midi }) => midi)).toEqual(Array.from({ length: 85 }, (_, index) => 21 + index));
  });

  it('has tensions as pianos have them, and a pull at the pin of two to four newton metres', () => {
    for (const row of schedule?.rows ?? []) {
      const load = pinLoad(row, 440, 7.27);
      if (!load.known) throw new Error(load.reason);
      expect(load.tensionN).toBeGreaterThan(550);
      expect(load.tensionN).toBeLessThan(1000);
      expect(load.stringTorqueNm).toBeGreaterThan(2);
      expect(load.stringTorqueNm).toBeLessThan(4);
    }
  });
});
