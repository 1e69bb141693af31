import { describe, expect, it } from 'vitest';
import type { InstrumentId, TorqueId, VisitId } from '../../src/piano/ids.ts';
import type { StringPosition } from '../../src/piano/reading.ts';
import type { TorqueReading } from '../../src/piano/stringingRecords.ts';
import type { JudgedPin } from '../../src/stability/drift/judgedPin.ts';
import {
  rankAgreement,
  slippingAndSteady,
  type TorqueAndSlip,
  torqueAndSlip,
} from '../../src/stability/torqueAgainstSlip.ts';
import { TORQUE_BANDS, torqueBand } from '../../src/stability/torqueBands.ts';
import { type PinTorque, pinTorques } from '../../src/stability/torquePins.ts';
import { torqueSummary } from '../../src/stability/torqueSummary.ts';

function reading(midi: number, torqueNm: number, fields: Partial<TorqueReading> = {}): TorqueReading {
  return {
    id: `${midi} ${torqueNm}` as TorqueId,
    instrumentId: 'i' as InstrumentId,
    visitId: 'v' as VisitId,
    midi,
    stringPosition: 2,
    torqueNm,
    direction: 'not noted',
    remark: '',
    ...fields,
  };
}

const pin = (midi: number, torqueNm: number, stringPosition: StringPosition = 2): PinTorque => ({
  midi,
  stringPosition,
  torqueNm,
  read: 'not noted',
});

describe('torqueBand', () => {
  // 30, 50, 80 and 150 in·lb are 3.39, 5.65, 9.04 and 16.95 N·m.
  it.each([
    [2, 'below holding'],
    [3.4, 'doubtful'],
    [5.6, 'doubtful'],
    [5.7, 'adequate'],
    [9.1, 'as in a new block'],
    [16.9, 'as in a new block'],
    [17.1, 'tight'],
  ])('%s N·m is %s', (torqueNm, name) => {
    expect(torqueBand(torqueNm)).toBe(name);
  });

  it('leaves no gap between bands', () => {
    TORQUE_BANDS.slice(1).forEach((band, index) => {
      expect(band.fromNm).toBe(TORQUE_BANDS[index]?.toNm);
    });
  });

  it.each([0, -1, Number.NaN])('refuses %s N·m', (torqueNm) => {
    expect(() => torqueBand(torqueNm)).toThrow(/torqueNm/);
  });
});

describe('pinTorques', () => {
  it('takes the mean of both directions, so that the string’s part cancels', () => {
    // Friction 6 N·m and a string of 2.9 N·m: 8.9 sharpwards, 3.1 flatwards.
    const both = [reading(60, 8.9, { direction: 'sharpwards' }), reading(60, 3.1, { direction: 'flatwards' })];
    expect(pinTorques(both)).toEqual([{ midi: 60, stringPosition: 2, torqueNm: 6, read: 'both ways' }]);
  });

  it('weighs the directions alike where one was read twice', () => {
    const three = [
      reading(60, 9, { direction: 'sharpwards' }),
      reading(60, 8.8, { direction: 'sharpwards' }),
      reading(60, 3.1, { direction: 'flatwards' }),
    ];
    expect(pinTorques(three)[0]?.torqueNm).toBeCloseTo(6, 12);
  });

  it('gives the pins in the order of the block', () => {
    const order = pinTorques([
      reading(61, 7),
      reading(60, 8, { stringPosition: 3 }),
      reading(60, 9, { stringPosition: 1 }),
    ]);
    expect(order.map(({ midi, stringPosition }) => [midi, stringPosition])).toEqual([
      [60, 1],
      [60, 3],
      [61, 2],
    ]);
  });
});

describe('torqueSummary', () => {
  const row = { compass: { lowestMidi: 21, highestMidi: 108 }, bassBridgeTopMidi: 43, strutsAfterMidi: [71] };

  it('says how each section lies, and counts the doubtful pins', () => {
    const summary = torqueSummary([pin(30, 8), pin(31, 10), pin(80, 3), pin(81, 4), pin(82, 6)], row);
    expect(summary.whole).toEqual({ pinCount: 5, medianNm: 6, lowestNm: 3, highestNm: 10, doubtfulCount: 2 });
    expect(summary.sections.map(({ fromMidi, toMidi, figures }) => [fromMidi, toMidi, figures.medianNm])).toEqual([
      [21, 43, 9],
      [72, 108, 4],
    ]);
  });

  it('has nothing to say where no pin was read, and no sections where none are known', () => {
    expect(torqueSummary([], row)).toEqual({ whole: null, sections: [] });
    expect(torqueSummary([pin(30, 8)], { ...row, bassBridgeTopMidi: null, strutsAfterMidi: [] }).sections).toEqual([]);
  });
});

describe('torqueAndSlip', () => {
  const judged = (midi: number, centsPerYear: number | null, stringPosition: StringPosition = 2): JudgedPin => ({
    midi,
    stringPosition,
    slip: { centsPerYear, standardUncertainty: centsPerYear === null ? null : 0.3, probability: 0.1 },
    isFlagged: false,
  });

  it('pairs the same pins and leaves out those of which one figure is missing', () => {
    const pairs = torqueAndSlip(
      [pin(60, 8), pin(61, 3), pin(62, 5)],
      [judged(60, 0), judged(61, -4), judged(62, null)],
    );
    expect(pairs.map(({ midi, torqueNm, slipCentsPerYear }) => [midi, torqueNm, slipCentsPerYear])).toEqual([
      [60, 8, 0],
      [61, 3, -4],
    ]);
  });

  it('takes a torque of no named string as the one string’s that was surveyed', () => {
    expect(torqueAndSlip([pin(60, 8, 0)], [judged(60, -1)])).toMatchObject([{ midi: 60, stringPosition: 2 }]);
  });

  it('does not guess which string it was where there are several', () => {
    expect(torqueAndSlip([pin(60, 8, 0)], [judged(60, -1, 1), judged(60, -2, 3)])).toEqual([]);
    expect(torqueAndSlip([pin(60, 8, 1)], [judged(60, -1, 3)])).toEqual([]);
  });
});

describe('rankAgreement', () => {
  const pairs = (slips: readonly number[], torques: readonly number[]): TorqueAndSlip[] =>
    slips.map((slipCentsPerYear, index) => ({
      midi: 60 + index,
      stringPosition: 2,
      torqueNm: torques[index] ?? 0,
      slipCentsPerYear,
      slipU: 0.3,
    }));

  // Reference: scipy.stats.spearmanr, and the interval by hand from Bonett and Wright's variance (see the recipe below).
  it('agrees with the published procedure', () => {
    const x = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110];
    const y = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17];
    const found = rankAgreement(pairs(y, x));
    expect(found?.rho).toBeCloseTo(-29 / 165, 12);
    // z = atanh(−0.175758) = −0.177603; half width 1.96·√(1.015445/7) = 0.746511
    expect(found?.low).toBeCloseTo(Math.tanh(-0.177603 - 0.746511), 4);
    expect(found?.high).toBeCloseTo(Math.tanh(-0.177603 + 0.746511), 4);
  });

  it('lies above zero where the loose pins are the ones that go flat', () => {
    const torques = [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
    expect(rankAgreement(pairs([-9, -7, -5, -4, -3, -2, -1, 0, 0, 0, 1], torques))?.rho).toBeGreaterThan(0.95);
  });

  it('sets the torques of slipping pins against those of the others', () => {
    // Slips beyond 0.6 cents a year, two standard uncertainties, count.
    const four = pairs([-3, -0.5, 0.2, -2], [2, 8, 9, 4]);
    expect(slippingAndSteady(four)).toEqual({
      slippingCount: 2,
      slippingMedianNm: 3,
      steadyCount: 2,
      steadyMedianNm: 8.5,
    });
    expect(slippingAndSteady(pairs([0, 0.1], [8, 9]))).toBeNull();
  });

  it('says nothing from few pins, or where nothing differs', () => {
    expect(rankAgreement(pairs([-1, 0, 0], [3, 8, 9]))).toBeNull();
    expect(rankAgreement(pairs(Array<number>(12).fill(0), [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]))).toBeNull();
  });
});
