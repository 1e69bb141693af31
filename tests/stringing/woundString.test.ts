import { expect, it } from 'vitest';
import { loadOfMass } from '../../src/stringing/stringLoad.ts';
import { massPerLength } from '../../src/stringing/woundString.ts';

const STRING = { coreDiameterMm: 1.397, overallDiameterMm: 4, wrap: 'copper' } as const;

// GNU bc -l: k=a(1); m=k*(7850*d^2+k*8930*(w^2-d^2)); m*(2*1.3*55)^2; that over k*d^2, with d=0.001397, w=0.004
it('agrees with the reference: mass, tension at A1 and stress in the core', () => {
  const massPerLengthKgPerM = massPerLength(STRING);
  const load = loadOfMass({ massPerLengthKgPerM, coreDiameterMm: 1.397, speakingLengthMm: 1300 }, 55);
  expect(massPerLengthKgPerM).toBeCloseTo(0.08942, 5);
  expect(load.tensionN).toBeCloseTo(1828.5, 1);
  expect(load.stressMpa).toBeCloseTo(1192.9, 1);
});

// C2 and D#1 of the concert grand in tests/reference/stringing/publishedStrings.ts, whose wrapped strings are published as a core of an
// effective density: 23 919 kg/m³ on 1.051 mm, 65.56 Hz, 1602 mm and 915 N; 43 195 on 1.492 mm, 38.98 Hz, 1965 mm and 1773 N.
it.each([
  [23919, 1.051, 65.56, 1602, 915],
  [43195, 1.492, 38.98, 1965, 1773],
])('gives the published tension of a wound string of effective density %i', (density, core, hz, length, wantedN) => {
  const massPerLengthKgPerM = (Math.PI / 4) * density * (core / 1000) ** 2;
  const { tensionN } = loadOfMass({ massPerLengthKgPerM, coreDiameterMm: core, speakingLengthMm: length }, hz);
  expect(Math.abs(tensionN / wantedN - 1)).toBeLessThan(0.002);
});

it('makes a copper string heavier than an iron one, and neither as heavy as a solid bar', () => {
  const [copper, iron] = (['copper', 'iron'] as const).map((wrap) => massPerLength({ ...STRING, wrap }));
  expect(copper).toBeGreaterThan(iron ?? 0);
  expect(copper).toBeLessThan((Math.PI / 4) * 8930 * 0.004 ** 2);
});

it('refuses a core as thick as the string', () => {
  expect(() => massPerLength({ ...STRING, coreDiameterMm: 4 })).toThrow(/coreDiameterMm must be below/);
});
