import { describe, expect, it } from 'vitest';
import { readingDocument } from '../../src/files/measureDocument.ts';
import type { NoteReading } from '../../src/piano/reading.ts';

const READING: NoteReading = {
  midi: 57,
  stringPosition: 1,
  onsetS: 0.212,
  durationS: 4.1,
  pitchStandardHz: 440,
  partial1Hz: 219.87,
  partial1StandardUncertaintyHz: 0.002,
  partial1Source: 'measured',
  f0Hz: 219.82,
  f0StandardUncertaintyHz: 0.003,
  inharmonicityB: 0.000212,
  inharmonicityBStandardUncertainty: 0.000002,
  offsetCents: -1.02,
  offsetStandardUncertaintyCents: 0.02,
  partials: [
    {
      partialNumber: 1,
      frequencyHz: 219.87,
      frequencyStandardUncertaintyHz: 0.002,
      levelDbfs: -18.2,
      snrDb: 44,
      promptDecayTimeS: 2.1,
      afterDecayTimeS: 9,
      beats: [{ rateHz: 0.62, rateStandardUncertaintyHz: 0.01, depthDb: 7.5 }],
      components: [
        {
          frequencyHz: 219.8,
          frequencyStandardUncertaintyHz: 0.002,
          levelDbfs: -18.2,
          decayTimeS: Number.POSITIVE_INFINITY,
        },
      ],
    },
  ],
  beating: {
    kind: 'false beat',
    rateHz: 0.62,
    depthDb: 7.5,
    partialNumbers: [2, 3],
    reason: 'on partials 2 and 3 only',
  },
  unisonStringsCents: null,
  lifeTimeS: 9,
  quality: { snrDb: 41, isClipped: false, isUsable: true, faults: [] },
};

describe('readingDocument', () => {
  // The contract's own example of a reading, key by key.
  it('has the keys that are promised', () => {
    expect(readingDocument(READING)).toMatchObject({
      note: 'A3',
      midi: 57,
      string: 1,
      onsetS: 0.212,
      durationS: 4.1,
      partial1Hz: 219.87,
      partial1HzU: 0.002,
      partial1Source: 'measured',
      f0Hz: 219.82,
      inharmonicityB: 0.000212,
      inharmonicityBU: 0.000002,
      cents: -1.02,
      centsU: 0.02,
      partials: [
        {
          n: 1,
          hz: 219.87,
          hzU: 0.002,
          levelDb: -18.2,
          promptDecayS: 2.1,
          afterDecayS: 9,
          beats: [{ rateHz: 0.62, rateHzU: 0.01, depthDb: 7.5 }],
        },
      ],
      beating: { kind: 'false beat', rateHz: 0.62, depthDb: 7.5, partials: [2, 3], reason: 'on partials 2 and 3 only' },
      quality: { snrDb: 41, clipped: false, usable: true, reasons: [] },
    });
  });

  it('puts every U right after the key whose uncertainty it is', () => {
    for (const keys of [readingDocument(READING), readingDocument(READING).partials[0] ?? {}].map(Object.keys))
      for (const [index, key] of keys.entries()) if (key.endsWith('U')) expect(keys[index - 1]).toBe(key.slice(0, -1));
  });

  it('writes null for what could not be measured, never NaN, infinity or 0', () => {
    const unmeasured = {
      ...READING,
      f0Hz: null,
      inharmonicityB: null,
      inharmonicityBStandardUncertainty: Number.NaN,
      lifeTimeS: null,
      quality: { ...READING.quality, snrDb: Number.NEGATIVE_INFINITY },
    };
    const document = readingDocument(unmeasured);
    expect(document).toMatchObject({ f0Hz: null, inharmonicityB: null, inharmonicityBU: null, lifeTimeS: null });
    expect(document.quality.snrDb).toBeNull();
    expect(document.partials[0]?.components[0]?.decayS).toBeNull();
    expect(JSON.parse(JSON.stringify(document))).toEqual(document);
  });

  it('names the faults of a bad take', () => {
    const quality = { ...READING.quality, isUsable: false, faults: ['clipped', 'two-notes'] as const };
    expect(readingDocument({ ...READING, quality }).quality).toMatchObject({
      usable: false,
      reasons: ['clipped', 'two-notes'],
    });
  });
});
