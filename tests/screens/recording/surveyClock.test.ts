import { expect, it } from 'vitest';
import { createSurveyClock, type SurveyClock } from '../../../src/screens/recording/surveyClock.ts';
import { seededRandom } from '../../support/seededRandom.ts';

/** Points every five seconds of a clock that runs `ppm` fast, told up to 0.2 ms late. */
function run(clock: SurveyClock, ppm: number, pointCount: number, startMs: number, seed = 1): void {
  const { uniform } = seededRandom(seed);
  for (let index = 1; index <= pointCount; index += 1) {
    const timeS = 5 * index;
    const audioFrameCount = Math.round(timeS * 48000 * (1 + ppm / 1e6));
    clock.hear({
      kind: 'clock',
      audioFrameCount,
      systemTimeMs: startMs + 1000 * timeS + 0.2 * uniform(),
      runNumber: 0,
    });
  }
}

it('finds the offset over a survey of five minutes within its uncertainty', () => {
  const clock = createSurveyClock();
  clock.begin(48000);
  run(clock, 80, 60, 1000);
  const offset = clock.offset();
  expect(offset?.offsetStandardUncertaintyPpm).toBeLessThan(0.2);
  expect(Math.abs((offset?.offsetPpm ?? 0) - 80)).toBeLessThan(4 * (offset?.offsetStandardUncertaintyPpm ?? 0));
});

it('does not compare across two starts of the microphone', () => {
  const clock = createSurveyClock();
  clock.begin(48000);
  run(clock, 80, 20, 0);
  clock.begin(48000);
  run(clock, 80, 40, 700_000, 2);
  expect(clock.offset()?.offsetPpm).toBeCloseTo(80, 0);
});

it('says nothing of half a minute', () => {
  const clock = createSurveyClock();
  expect(clock.offset()).toBeNull();
  clock.begin(48000);
  run(clock, 80, 5, 0);
  expect(clock.offset()).toBeNull();
});

it('forgets what another rate counted', () => {
  const clock = createSurveyClock();
  clock.begin(48000);
  run(clock, 80, 60, 0);
  clock.begin(44100);
  expect(clock.offset()).toBeNull();
});
