import { describe, expect, it } from 'vitest';
import { medianOf } from '../../../src/piano/robustStatistics.ts';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import type { RecordSet } from '../../../src/records/recordSet.ts';
import { checkRow } from '../../../src/records/rowSchemas.ts';
import { pinLoad } from '../../../src/stringing/pinLoad.ts';
import { analyseScale } from '../../../src/stringing/scale/analyseScale.ts';
import { diametersFromB } from '../../../src/stringing/wireCheck/diameterFromB.ts';

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

describe.each([
  { name: 'upright', set: failing, noteCount: 85 },
  { name: 'garden house grand', set: settling, noteCount: 88 },
])('the schedule of the invented $name', ({ set, noteCount }) => {
  const [schedule] = set.schedules;
  const rows = schedule?.rows ?? [];
  const { bassBridgeTopMidi, strutsAfterMidi } = set.instruments[0]!;
  const options = { pitchStandardHz: 440, bassBridgeTopMidi, strutsAfterMidi };
  const measured = (surveyId: string | undefined) =>
    set.takes.flatMap(({ surveyId: own, midi, stringPosition, isKept, reading }) => {
      const { inharmonicityB, inharmonicityBStandardUncertainty } = reading;
      if (own !== surveyId || !isKept || inharmonicityB === null || inharmonicityBStandardUncertainty === null)
        return [];
      return [{ midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty }];
    });

  it('is a sound row that has every note of the compass once, of a wire whose strength is known', () => {
    expect(checkRow('schedules', schedule).isSound).toBe(true);
    expect(rows.map(({ midi }) => midi)).toEqual(Array.from({ length: noteCount }, (_, index) => 21 + index));
    for (const { breakingShare } of analyseScale(rows, options).notes) {
      expect(breakingShare).toBeGreaterThan(0.25);
      expect(breakingShare).toBeLessThan(0.7);
    }
  });

  it('has tensions as pianos have them, and a pull at the pin of two to four newton metres', () => {
    for (const row of rows) {
      const load = pinLoad(row, 440, 7.27);
      if (!load.known) throw new Error(load.reason);
      expect(load.tensionN).toBeGreaterThan(550);
      expect(load.tensionN).toBeLessThan(1000);
      expect(load.stringTorqueNm).toBeGreaterThan(2);
      expect(load.stringTorqueNm).toBeLessThan(4);
    }
  });

  it('agrees with the inharmonicity that was measured, so that no diameter is doubted at any visit', () => {
    const expected = new Map(analyseScale(rows, options).notes.map(({ midi, predictedB }) => [midi, predictedB ?? 0]));
    const whole = set.surveys.filter(({ strings }) => strings === 'centre strings');
    for (const { id } of [whole[0]!, whole.at(-1)!]) {
      const strings = measured(id);
      for (const { midi, inharmonicityB } of strings) {
        const ratio = inharmonicityB / (expected.get(midi) ?? 0);
        expect(ratio).toBeGreaterThan(0.87);
        expect(ratio).toBeLessThan(midi <= (bassBridgeTopMidi ?? 0) ? 1.4 : 1.15);
      }
      const check = diametersFromB(rows, strings, options);
      expect(check.known && check.strings.filter(({ verdict }) => verdict !== 'fits')).toEqual([]);
    }
  });
});

it('shows in the garden house grand one string of another wire than its schedule says', () => {
  const { schedules = [], surveys, takes, instruments } = settling;
  const bench = surveys.filter(({ strings }) => strings === 'single strings');
  const kept = takes.filter(({ surveyId, isKept }) => isKept && surveyId === bench[0]?.id);
  const left = kept.find(({ midi, stringPosition }) => midi === 76 && stringPosition === 1)!;
  const centre = surveys.find(({ visitId, stage }) => visitId === bench[0]?.visitId && stage === 'as-left');
  const strings = [...takes.filter(({ surveyId }) => surveyId === centre?.id), left].flatMap(
    ({ midi, stringPosition, reading: { inharmonicityB, inharmonicityBStandardUncertainty } }) =>
      inharmonicityB === null || inharmonicityBStandardUncertainty === null
        ? []
        : [{ midi, stringPosition, inharmonicityB, inharmonicityBStandardUncertainty }],
  );
  const { bassBridgeTopMidi, strutsAfterMidi } = instruments[0]!;
  const options = { pitchStandardHz: 440, bassBridgeTopMidi, strutsAfterMidi };
  const check = diametersFromB(schedules[0]!.rows, strings, options);
  expect(check.known && check.strings.filter(({ verdict }) => verdict === 'does-not-fit')).toMatchObject([
    { midi: 76, stringPosition: 1 },
  ]);
});
