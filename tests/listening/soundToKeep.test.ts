import { describe, expect, it } from 'vitest';
import { hasRoomForSound, soundToKeep } from '../../src/listening/soundToKeep.ts';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../src/piano/ids.ts';
import type { Take } from '../../src/piano/instrument.ts';
import { readingAt } from '../screens/plainReading.ts';

const take: Take = {
  id: 't' as TakeId,
  surveyId: 's' as SurveyId,
  visitId: 'v' as VisitId,
  instrumentId: 'i' as InstrumentId,
  midi: 69,
  stringPosition: 2,
  recordedAt: '2030-01-01T10:00:00.000Z',
  isKept: true,
  reading: readingAt(69, 0),
};
/** Ten seconds at 1 kHz; the strike 0.3 s after the first sample. */
const told = {
  samples: Float32Array.from({ length: 10_000 }, (_, index) => index),
  sampleRateHz: 1000,
  startS: 5,
  onsetS: 5.3,
};

describe('soundToKeep', () => {
  it('keeps four seconds from the strike, and what stands before it', () => {
    const kept = soundToKeep(take, told, 'first-seconds');
    expect(kept?.samples).toEqual(told.samples.subarray(0, 4300));
    expect(kept?.sound).toMatchObject({ id: 't', onsetIndex: 300, startS: 5, durationS: 4.3, takeDurationS: 10 });
  });

  it('keeps all of it, or none, where that is wished', () => {
    expect(soundToKeep(take, told, 'whole')?.samples).toEqual(told.samples);
    expect(soundToKeep(take, told, 'none')).toBeNull();
  });

  it('keeps a take that is shorter than four seconds whole', () => {
    const short = { ...told, samples: told.samples.slice(0, 2000) };
    expect(soundToKeep(take, short, 'first-seconds')?.sound).toMatchObject({ durationS: 2, takeDurationS: 2 });
  });
});

it('leaves room for figures on a device that is nearly full', () => {
  const full = { usedBytes: 990e6, quotaBytes: 1000e6, isPersistent: true };
  expect(hasRoomForSound(full)).toBe(false);
  expect(hasRoomForSound({ ...full, usedBytes: 900e6 })).toBe(true);
  expect(hasRoomForSound({ ...full, quotaBytes: null })).toBe(true);
});
