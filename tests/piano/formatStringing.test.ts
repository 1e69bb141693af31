import { expect, it } from 'vitest';
import {
  formatAddedPull,
  formatGauge,
  formatGaugeSize,
  formatGrowth,
  formatLengthMm,
  formatPull,
  formatStress,
  formatTension,
  formatWireMm,
  formatWireOtherwise,
} from '../../src/piano/formatStringing.ts';
import { gaugeOfNumber } from '../../src/piano/wireGauge.ts';

const plain = (text: string) => text.replace(/[\u00a0\u2009]/g, ' ');

it('writes lengths, wires, pulls and stresses with their units', () => {
  expect(plain(formatLengthMm(412.54))).toBe('412.5 mm');
  expect(plain(formatWireMm(0.975))).toBe('0.975 mm');
  expect(plain(formatTension(664.498))).toBe('664 N');
  expect(plain(formatStress(972.6))).toBe('973 MPa');
  expect(formatLengthMm(null)).toBe('–');
});

it('says the pull of many strings in tonnes-force too', () => {
  // 162278.325 N / 9806.65 N = 16.5478 (GNU bc)
  expect(plain(formatPull(162278.325))).toBe('162.3 kN (16.5 tonnes-force)');
  expect(plain(formatAddedPull(-3700))).toBe('−3.7 kN (−0.38 tonnes-force)');
});

it('names a wire by its size where it has one, and by inches always', () => {
  expect(plain(formatWireOtherwise(0.8))).toBe('metric 13½ · 0.0315 in');
  expect(plain(formatWireOtherwise(0.991))).toBe('inch 17 · 0.0390 in');
  expect(plain(formatWireOtherwise(2.4))).toBe('0.0945 in');
  const gauge = gaugeOfNumber('metric', 13.5);
  expect(gauge && formatGauge(gauge)).toBe('metric 13½');
  expect(gauge && plain(formatGaugeSize(gauge))).toBe('metric 13½ (0.800 mm)');
});

it('writes a growth with its sign, finer where it is small', () => {
  expect(plain(formatGrowth(0.0231))).toBe('+2.3 %');
  expect(plain(formatGrowth(-0.181))).toBe('−18 %');
  expect(formatGrowth(null)).toBe('–');
});
