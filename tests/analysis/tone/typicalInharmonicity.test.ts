import { describe, expect, it } from 'vitest';
import { partialHz, typicalInharmonicity } from '../../../src/analysis/tone/typicalInharmonicity.ts';
import { hzToCents } from '../../../src/piano/cents.ts';

describe('typicalInharmonicity', () => {
  // e^(0.0926·m − 13.64) + e^(−0.0847·m − 5.82) worked with a pocket calculator; constants by F. Rigaud, B. David and L. Daudet, DAFx-11.
  it.each([
    { midi: 21, b: 5.094e-4 },
    { midi: 44, b: 1.415e-4 },
    { midi: 60, b: 3.269e-4 },
    { midi: 69, b: 7.183e-4 },
    { midi: 96, b: 8.649e-3 },
    { midi: 108, b: 2.627e-2 },
  ])('is $b at MIDI $midi', ({ midi, b }) => expect(typicalInharmonicity(midi) / b).toBeCloseTo(1, 3));

  it('is least at G#2 and rises from there to both sides', () => {
    const all = Array.from({ length: 88 }, (_, i) => typicalInharmonicity(21 + i));
    expect(all.indexOf(Math.min(...all)) + 21).toBe(44);
    for (let i = 24; i < 88; i++) expect(all[i]).toBeGreaterThan(all[i - 1]!);
    for (let i = 1; i < 23; i++) expect(all[i]).toBeLessThan(all[i - 1]!);
  });

  it('doubles about every eight semitones in the treble, as R. W. Young measured (J. Acoust. Soc. Am. 24 (1952) 267)', () => {
    const semitones = (12 * Math.log(2)) / Math.log(typicalInharmonicity(96) / typicalInharmonicity(84));
    expect(semitones).toBeGreaterThan(7.2);
    expect(semitones).toBeLessThan(8.3);
    // He gives 1.2 cents at the second partial of C4: B = (2^(1.2/600) − 1)/4 = 3.466e-4.
    expect(typicalInharmonicity(60) / 3.466e-4).toBeCloseTo(1, 0.9);
  });
});

describe('partialHz', () => {
  it('is n·f0·√(1 + B·n²): the partials of a string of 220 Hz with B = 5e-4', () => {
    // H. Fletcher, J. Acoust. Soc. Am. 36 (1964) 203–209; the values by GNU bc -l: n*220*sqrt(1+0.0005*n*n).
    const values = [220.055, 440.4398, 661.4833, 883.513, 1106.8536, 1331.827, 1558.7508, 1787.9383];
    values.forEach((hz, i) => {
      expect(partialHz(220, 5e-4, i + 1)).toBeCloseTo(hz, 3.7);
    });
  });

  it.each([
    [1, 0.346],
    [2, 1.384],
    [4, 5.522],
    [8, 21.881],
  ])('stands partial %s of a string with B = 4e-4 %s cents above its multiple of f0', (n, cents) => {
    expect(Math.abs(hzToCents(partialHz(100, 4e-4, n), n * 100) - cents)).toBeLessThan(0.0006);
  });

  it('is harmonic without stiffness and in proportion to f0', () => {
    expect(partialHz(123, 0, 7)).toBe(7 * 123);
    expect(partialHz(246, 1e-3, 9) / partialHz(123, 1e-3, 9)).toBeCloseTo(2, 14);
  });
});
