import { describe, expect, it } from 'vitest';
import {
  formatBeatRate,
  formatCents,
  formatCentsUncertainty,
  formatCentsValue,
  formatCount,
  formatDate,
  formatDuration,
  formatHumidity,
  formatHz,
  formatInharmonicity,
  formatLevel,
  formatNote,
  formatNoteRange,
  formatNotes,
  formatNumber,
  formatPitchStandard,
  formatPower,
  formatSeconds,
  formatSentence,
  formatShare,
  formatSigned,
  formatSpreadCents,
  formatTemperature,
  formatTimeLeft,
  formatYears,
} from '../../src/piano/format.ts';

/** Thin and no-break spaces are a matter of typesetting; the claims here are about figures and words. */
const plain = (text: string) => text.replace(/[\u2009\u00a0]/g, ' ');

describe('figures', () => {
  it.each([
    [-1.25, 1, '−1.3'],
    [0, 1, '0.0'],
    [-0.04, 1, '0.0'],
    [12, 0, '12'],
  ])('writes %s with %s decimals as %s', (value, decimals, text) => {
    expect(formatNumber(value, decimals)).toBe(text);
  });

  it('gives a sign to everything but what rounds to zero', () => {
    expect([1.25, -1.25, 0, 0.01, -0.01].map((value) => formatSigned(value, 1))).toEqual([
      '+1.3',
      '−1.3',
      '0.0',
      '0.0',
      '0.0',
    ]);
  });

  // The value stops at the place where its uncertainty has its second digit (JCGM 100:2008, 7.2.6).
  it.each([
    [-1.0234, 0.314, '−1.02 ± 0.31 cents'],
    [-1.0234, 3.14, '−1.0 ± 3.1 cents'],
    [-41.2, 31.4, '−41 ± 31 cents'],
    [1.0234, 0.0214, '+1.02 ± 0.02 cents'],
    [1.0234, 0.0014, '+1.02 ± <0.01 cents'],
  ])('writes %s cents known to %s as %s', (value, uncertainty, text) => {
    expect(plain(formatCents(value, uncertainty))).toBe(text);
  });

  it('writes cents with one decimal where no uncertainty is known', () => {
    expect(plain(formatCents(-1.0234))).toBe('−1.0 cents');
    expect(formatCentsValue(2)).toBe('+2.0');
  });

  it.each([
    [219.87123, 0.0021, '219.8712 ± 0.0021 Hz'],
    [4186.01, 0.31, '4186.01 ± 0.31 Hz'],
    [27.5, 0.00001, '27.5000 ± <0.0001 Hz'],
    [27.5, undefined, '27.5 Hz'],
  ])('writes %s Hz known to %s as %s', (value, uncertainty, text) => {
    expect(plain(formatHz(value, uncertainty))).toBe(text);
  });

  it.each([
    [0.000212, 0.000002, '(2.120 ± 0.020) × 10⁻⁴'],
    [0.0123, 0.0011, '(1.23 ± 0.11) × 10⁻²'],
    [0.000212, 0.000000001, '(2.1200 ± <0.0001) × 10⁻⁴'],
    [0.000212, undefined, '2.12 × 10⁻⁴'],
  ])('writes an inharmonicity of %s known to %s as %s', (value, uncertainty, text) => {
    expect(plain(formatInharmonicity(value, uncertainty))).toBe(text);
  });

  it('shows what could not be measured as a dash, never as zero', () => {
    const texts = [formatCents(null), formatCentsValue(null), formatCentsUncertainty(null), formatHz(null)];
    texts.push(formatHumidity(null), formatTemperature(null), formatLevel(null), formatSeconds(null));
    texts.push(formatBeatRate(null), formatInharmonicity(null));
    expect(new Set(texts)).toEqual(new Set(['–']));
  });

  it('carries the unit of everything that has one', () => {
    const texts = [formatHumidity(41.6), formatTemperature(20.25), formatLevel(-18.2), formatSeconds(4.12)];
    expect(texts.map(plain)).toEqual(['41.6 % RH', '20.3 °C', '−18 dB', '4.1 s']);
    expect([440, 435.4].map((hz) => plain(formatPitchStandard(hz)))).toEqual(['A4 = 440 Hz', 'A4 = 435.4 Hz']);
    expect(formatBeatRate(0.625)).toBe('0.63 beats a second');
  });
});

it('shows a humidity as it was noted, with its decimal where it has one', () => {
  const texts = [48.5, 48, 47.96, 0.1 + 0.2].map((humidityPct) => plain(formatHumidity(humidityPct)));
  expect(texts).toEqual(['48.5 % RH', '48 % RH', '48 % RH', '0.3 % RH']);
});

describe('notes, dates and lengths of time', () => {
  it('writes sharps with the sharp sign', () => {
    expect([21, 54, 108].map(formatNote)).toEqual(['A0', 'F♯3', 'C8']);
    expect([formatNoteRange(59, 69), formatNoteRange(59, 59)]).toEqual(['B3 to A4', 'B3']);
  });

  it('gathers neighbours in a list of notes', () => {
    expect(formatNotes([60, 62, 63, 64])).toBe('C4, D4 to E4');
    expect(formatNotes([60, 61, 70])).toBe('C4, C♯4, A♯4');
    expect(formatNotes([])).toBe('');
  });

  it('writes a date in words, whatever the time zone of the machine', () => {
    expect(formatDate('2019-03-02')).toBe('2 March 2019');
    expect(formatDate('2019-12-31T23:59:59Z')).toBe('31 December 2019');
    expect(formatDate('2019-03-02', 'de')).toBe('2. März 2019');
  });

  it('leaves text that is no date as it is', () => {
    expect(formatDate('spring')).toBe('spring');
  });

  it.each([
    [20, 'less than a minute left'],
    [60, 'about a minute left'],
    [190, 'about 3 minutes left'],
  ])('says of %s s to go: %s', (durationS, text) => {
    expect(formatTimeLeft(durationS)).toBe(text);
  });

  it.each([
    [0.01, 'less than a month'],
    [0.085, '1 month'],
    [0.61, '7 months'],
    [2.26, '2.3 years'],
  ])('calls %s years %s', (years, text) => {
    expect(formatYears(years)).toBe(text);
  });

  it('makes a sentence of a text, and leaves a sentence alone', () => {
    expect(['no beat', 'No beat. ', '  ', 'Why?'].map(formatSentence)).toEqual(['No beat.', 'No beat.', '', 'Why?']);
  });

  it('counts one and many', () => {
    expect([0, 1, 2].map((count) => formatCount(count, 'visit', 'visits'))).toEqual([
      '0 visits',
      '1 visit',
      '2 visits',
    ]);
  });
});

it.each([
  [formatPower(0.0005), '5 × 10⁻⁴'],
  [formatPower(0.001), '10⁻³'],
  [formatPower(0.02), '2 × 10⁻²'],
  [formatPower(20), '2 × 10¹'],
  [formatDuration(0.5), '0.5 s'],
  [formatDuration(20), '20 s'],
  [formatShare(0.043), '4 %'],
  [formatShare(0.0052), '0.5 %'],
  [formatSpreadCents(0.123), '0.12 cents'],
])('writes figures of a chart as %s', (text, expected) => {
  expect(plain(text)).toBe(expected);
});
