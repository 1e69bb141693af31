import { afterEach, describe, expect, it } from 'vitest';
import {
  formatCents,
  formatDate,
  formatHumidity,
  formatInharmonicity,
  formatNoteRange,
  formatNumber,
  formatSigned,
  formatTemperature,
  formatYears,
} from '../../src/piano/format.ts';
import { formatAny } from '../../src/piano/formatAny.ts';
import { writeFiguresIn } from '../../src/piano/formatLanguage.ts';
import { formatProbability, formatRateValue } from '../../src/piano/formatStability.ts';
import { formatDiameter, formatTorque, formatTorqueInBoth } from '../../src/piano/formatTorque.ts';
import { shownTemperature, showUnits, typedTemperatureC } from '../../src/piano/formatUnits.ts';
import { readFigure, readFigureWithin, writeFigure } from '../../src/piano/readFigure.ts';

afterEach(() => {
  writeFiguresIn('en');
  showUnits({ length: 'mm', temperature: '°C', torque: 'N·m' });
});

/** Every kind of blank as a plain one, to be read here. */
const plain = (text: string) => text.replace(/\s/g, ' ');

describe('figures in German', () => {
  it('have a decimal comma, and keep the true minus and nought without a sign', () => {
    writeFiguresIn('de');
    expect([formatNumber(-1.25, 1), formatSigned(0.04, 1), formatNumber(-0.04, 1)]).toEqual(['−1,3', '0,0', '0,0']);
    expect(plain(formatInharmonicity(0.000212, 0.000002))).toBe('(2,120 ± 0,020) × 10⁻⁴');
    expect(formatAny(41.25)).toBe('41,25');
    expect(formatAny(2.5)).toBe('2,5');
  });

  it('say an uncertainty below the last place as such', () => {
    writeFiguresIn('de');
    expect(plain(formatCents(-1.02, 0.0001))).toBe('−1,02 ± <0,01 Cent');
    expect(plain(formatRateValue(-2.4, 0.001))).toBe('−2,40 ± <0,01');
  });

  it('have German words and dates', () => {
    writeFiguresIn('de');
    expect(formatDate('2019-03-02')).toBe('2. März 2019');
    expect([formatYears(0.61), formatYears(2.5), formatNoteRange(59, 69)]).toEqual([
      '7 Monate',
      '2,5 Jahre',
      'B3 bis A4',
    ]);
    expect([plain(formatHumidity(42)), plain(formatProbability(0.997))]).toEqual(['42 % rF', 'mehr als 99 %']);
  });
});

describe('units', () => {
  it('are those that were chosen', () => {
    showUnits({ length: 'in', temperature: '°F', torque: 'in·lb' });
    expect(
      [formatTemperature(20), formatTorque(13.56), formatTorqueInBoth(13.56), formatDiameter(7.16)].map(plain),
    ).toEqual(['68.0 °F', '120 in·lb', '120 in·lb (13.6 N·m)', '0.282 in']);
  });

  it('bring a typed temperature back as it was typed', () => {
    showUnits({ temperature: '°F' });
    for (const typed of [-22, 32, 70.1, 71.3, 140])
      expect(shownTemperature(typedTemperatureC(typed))).toBeCloseTo(typed, 2);
    showUnits({ temperature: '°C' });
    expect(typedTemperatureC(21.3)).toBe(21.3);
  });
});

describe('a typed figure', () => {
  it.each([
    ['1.5', 1.5],
    ['1,5', 1.5],
    [' −1,5 ', -1.5],
    ['-2', -2],
    ['', null],
    ['  ', null],
    ['1.000,5', undefined],
    ['1,2,3', undefined],
    ['ab', undefined],
    ['1,', undefined],
  ])('“%s” is read with point or comma', (text, value) => {
    expect(readFigure(text)).toBe(value);
  });

  it('has to lie within its limits', () => {
    expect([readFigureWithin('5', 5, 9), readFigureWithin('9,01', 5, 9), readFigureWithin('', 5, 9)]).toEqual([
      5,
      undefined,
      null,
    ]);
  });

  it('stands in its field with the sign of the language', () => {
    expect(writeFigure(41.5)).toBe('41.5');
    writeFiguresIn('de');
    expect(writeFigure(41.5)).toBe('41,5');
    expect(readFigure(writeFigure(-0.125))).toBe(-0.125);
  });
});
