import { describe, expect, it } from 'vitest';
import { depthToRatio, ratioToDepthDb } from '../../../src/stringing/falseBeats/beatStrength.ts';
import { falseBeatHistory } from '../../../src/stringing/falseBeats/falseBeatHistory.ts';
import { falseBeatList } from '../../../src/stringing/falseBeats/falseBeatList.ts';
import { beatReading } from '../beatReading.ts';

const beat = (partialNumber: number, rateHz: number, depthDb: number) => ({ partialNumber, rateHz, depthDb });
const order = (readings: Parameters<typeof falseBeatList>[0]) =>
  falseBeatList(readings).beating.map(({ midi }) => midi);

// Arithmetic: peak to trough of two sinusoids, 20·log10((1 + r)/(1 − r)).
it.each([
  [0.1, 1.743],
  [0.3, 5.377],
  [0.5, 9.542],
])('a ratio of %f is %f dB deep, and back', (ratio, depthDb) => {
  expect(ratioToDepthDb(ratio)).toBeCloseTo(depthDb, 3);
  expect(depthToRatio(depthDb)).toBeCloseTo(ratio, 3);
});

describe('falseBeatList', () => {
  it.each([
    ['deeper', [beat(1, 2, 12)], [beat(1, 2, 4)]],
    ['on a louder partial', [beat(1, 2, 8)], [beat(4, 2, 8)]],
    ['faster, up to a few a second', [beat(1, 2, 8)], [beat(1, 0.3, 8)]],
    ['not so fast that it is rough', [beat(1, 4, 8)], [beat(1, 15, 8)]],
  ])('puts first the beat that is %s', (_, heavy, light) => {
    expect(order([beatReading({ midi: 70, beats: light }), beatReading({ midi: 80, beats: heavy })])).toEqual([80, 70]);
  });

  it('needs time for a beat to be heard: the same beat in a tone that dies weighs less', () => {
    const [long, short] = [6, 0.5].map(
      (decayTimeS) => falseBeatList([beatReading({ beats: [beat(1, 1, 8)], decayTimeS })]).beating[0]?.weight ?? 0,
    );
    expect(short).toBeLessThan((long ?? 0) / 2);
  });

  it('lets a slow beat count for less even in a tone that lives long', () => {
    const [slow, even] = [0.5, 2].map(
      (rateHz) =>
        falseBeatList([beatReading({ beats: [beat(1, rateHz, 8)], durationS: 40, decayTimeS: 60 })]).beating[0]
          ?.weight ?? 0,
    );
    expect(slow).toBeLessThan(0.6 * (even ?? 0));
  });

  it('tells clean strings from those of which nothing can be said, and passes unisons over', () => {
    const list = falseBeatList([
      beatReading({ midi: 70 }),
      beatReading({ midi: 71, quietKind: 'undetermined' }),
      beatReading({ midi: 72, beats: [beat(1, 2, 8)], faults: ['too-noisy'] }),
      beatReading({ midi: 73, stringPosition: 0, beats: [beat(1, 2, 8)] }),
    ]);
    expect(list).toMatchObject({ beating: [], cleanCount: 1, unisonCount: 1 });
    expect(list.undecided.map(({ midi }) => midi)).toEqual([71, 72]);
  });

  it.each([
    ['in-proportion', [beat(1, 0.5, 8), beat(2, 1.02, 8), beat(3, 1.49, 8)]],
    ['few-partials', [beat(2, 1.3, 8)]],
    ['other', [beat(1, 2, 8), beat(2, 0.9, 8), beat(3, 3.1, 8)]],
  ])('names the pattern %s', (pattern, beats) => {
    expect(falseBeatList([beatReading({ beats })]).beating[0]?.pattern).toBe(pattern);
  });
});

it('falseBeatHistory follows one string from visit to visit', () => {
  const beating = beatReading({ beats: [beat(1, 2, 8)] });
  const history = falseBeatHistory(
    [
      { recordedOn: '2024-05-01', readings: [beatReading({ quietKind: 'undetermined' })] },
      { recordedOn: '2021-03-01', readings: [beating] },
      { recordedOn: '2022-03-01', readings: [beatReading({ stringPosition: 0 })] },
      { recordedOn: '2023-03-01', readings: [beatReading()] },
    ],
    { midi: 84, stringPosition: 2 },
  );
  expect(history.map(({ recordedOn, state }) => [recordedOn, state])).toEqual([
    ['2021-03-01', 'beats'],
    ['2022-03-01', 'not recorded'],
    ['2023-03-01', 'none'],
    ['2024-05-01', 'undecided'],
  ]);
  expect(history[0]?.partials).toMatchObject([{ partialNumber: 1, rateHz: 2, depthDb: 8 }]);
});
