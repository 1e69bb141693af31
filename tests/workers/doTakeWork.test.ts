import { describe, expect, it } from 'vitest';
import { levelSpectrum } from '../../src/analysis/signal/levelSpectrum.ts';
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import { encodeTakeSound } from '../../src/files/audio/takeSound.ts';
import type { TakeOutcome } from '../../src/piano/reading.ts';
import { doTakeWork } from '../../src/workers/doTakeWork.ts';
import type { MeasureAgainWork, PlainSound } from '../../src/workers/takeWork.ts';
import { synthesizeNote } from '../support/syntheticString.ts';

const SAMPLE_RATE_HZ = 22050;
const { samples, truth } = synthesizeNote({
  strings: [{ midi: 60, offsetCents: 4 }],
  durationS: 2.5,
  leadS: 0.3,
  sampleRateHz: SAMPLE_RATE_HZ,
  snrDb: 60,
  seed: 12,
});
const sixteenBit = Float32Array.from(samples, (sample) => Math.round(sample * 32767) / 32768);
const sound = { bytes: encodeTakeSound(sixteenBit, SAMPLE_RATE_HZ), onsetIndex: truth.onsetIndex, startS: 7 };
const asked = (over: Partial<MeasureAgainWork> = {}): MeasureAgainWork => ({
  kind: 'measure-again',
  sound,
  pitchStandardHz: 440,
  stringPosition: 2,
  midi: 60,
  hasHole: false,
  ...over,
});
const again = async (over?: Partial<MeasureAgainWork>) => {
  const outcome = (await doTakeWork(asked(over))) as TakeOutcome;
  if (!outcome.found) throw new Error(outcome.detail);
  return outcome.reading;
};

describe('measuring a stored sound again', () => {
  it('gives the very figures of the first time, where the program is the same and the sound was 16 bits wide', async () => {
    const options = { pitchStandardHz: 440, stringPosition: 2, onsetIndex: truth.onsetIndex, startS: 7 } as const;
    const first = measureTake(sixteenBit, SAMPLE_RATE_HZ, options);
    expect(first.found && first.reading).toEqual(await again());
  });

  it('measures the note that the take belongs to, where somebody knew better', async () => {
    expect(await again({ midi: 72 })).toMatchObject({ midi: 72, stringPosition: 2 });
  });

  it('does not forget that sound was missing inside the take', async () => {
    expect((await again({ hasHole: true })).quality).toMatchObject({ isUsable: false, faults: ['hole-in-recording'] });
  });

  it('fails with the reason where the bytes are damaged', async () => {
    const bytes = sound.bytes.slice(0, 100);
    await expect(doTakeWork(asked({ sound: { ...sound, bytes } }))).rejects.toThrow(/stored sound/);
  });
});

it('gives the spectrum that the page would make itself', async () => {
  const request = { startIndex: truth.onsetIndex, durationS: 0.7, highestHz: 4000, pointCount: 100 };
  const work = {
    kind: 'spectrum',
    samples: Float32Array.from(samples),
    sampleRateHz: SAMPLE_RATE_HZ,
    request,
  } as const;
  expect(await doTakeWork(work)).toEqual(levelSpectrum(samples, SAMPLE_RATE_HZ, request));
});

it('decodes what it encoded', async () => {
  const bytes = (await doTakeWork({ kind: 'encode', samples: sixteenBit, sampleRateHz: SAMPLE_RATE_HZ })) as Uint8Array;
  const decoded = (await doTakeWork({ kind: 'decode', bytes: new Uint8Array(bytes) })) as PlainSound;
  expect(decoded.sampleRateHz).toBe(SAMPLE_RATE_HZ);
  expect(decoded.samples.map((sample) => sample + 0)).toEqual(sixteenBit.map((sample) => sample + 0));
});
