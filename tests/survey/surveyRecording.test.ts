import { describe, expect, it } from 'vitest';
import type { MeasureOptions } from '../../src/analysis/tone/measureTake.ts';
import { createSurveyRecording, type MeasureTake } from '../../src/survey/surveyRecording.ts';
import { plainReading } from './plainReading.ts';
import { makeScene, type SceneOptions } from './scene.ts';

const RATE = 22050;
const OPTIONS = { compass: { lowestMidi: 60, highestMidi: 72 }, stringPosition: 2, pitchStandardHz: 440 } as const;
const SCENE: SceneOptions = {
  seed: 1,
  sampleRateHz: RATE,
  snrDb: 30,
  levelRangeDb: 8,
  holdS: [1.2, 1.6],
  gapS: [0, 0.2],
};

describe('createSurveyRecording with its own measuring', () => {
  it('names every note of a walk, what was skipped and what was played twice', () => {
    const walk = makeScene({ ...SCENE, fromMidi: 60, toMidi: 68, step: 2, repeatEach: 2 });
    const recording = createSurveyRecording(RATE, OPTIONS);
    recording.push(walk.samples);
    const survey = recording.finish();
    expect(survey.readings.map(({ midi }) => midi)).toEqual(walk.notes.map(({ midi }) => midi));
    expect(survey.skippedMidi).toEqual([61, 63, 65, 67, 69, 70, 71, 72]);
    expect(survey.repeated.map(({ midi }) => midi)).toEqual([60, 62, 64, 66, 68]);
    expect(survey.warnings).toEqual([]);
    for (const [index, reading] of survey.readings.entries()) {
      expect(reading.stringPosition).toBe(2);
      expect(Math.abs(reading.onsetS - walk.notes[index]!.onsetIndex / RATE)).toBeLessThan(0.01);
      // The synthetic strings stand on equal temperament.
      expect(Math.abs(reading.offsetCents)).toBeLessThan(1);
    }
  });
});

describe('what the measuring is told', () => {
  const scene = makeScene({ ...SCENE, seed: 2, fromMidi: 60, toMidi: 66 });
  const listen = (midis: readonly number[]) => {
    const told: MeasureOptions[] = [];
    const measure: MeasureTake = (_, __, options) => {
      told.push(options);
      return { found: true, reading: plainReading({ midi: midis[told.length - 1] ?? 0, onsetS: told.length }) };
    };
    const recording = createSurveyRecording(RATE, { ...OPTIONS, measure });
    for (let start = 0; start < scene.samples.length; start += 4096)
      recording.push(scene.samples.subarray(start, start + 4096));
    recording.finish();
    return told;
  };

  it('is the next note once a walk is established, up or down', () => {
    const up = listen([60, 61, 62, 63, 64, 65, 66]);
    expect(up.map(({ expectedMidi }) => expectedMidi)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      64,
      65,
      66,
    ]);
    const down = listen([66, 65, 64, 63, 62, 61, 60]);
    expect(down.at(-1)?.expectedMidi).toBe(60);
  });

  it('is no expectation while the player jumps', () => {
    expect(listen([60, 72, 61, 73, 62, 74, 63]).map(({ expectedMidi }) => expectedMidi)).toEqual(
      Array(7).fill(undefined),
    );
  });

  it('is where the strike lies in the samples and in the recording', () => {
    const told = listen([60, 61, 62, 63, 64, 65, 66]);
    expect(told).toHaveLength(7);
    for (const [index, { startS, onsetIndex }] of told.entries())
      expect(Math.abs(startS! + onsetIndex! / RATE - scene.notes[index]!.onsetIndex / RATE)).toBeLessThan(0.01);
  });
});

it('a sound in which nothing was found gives a warning and no reading', () => {
  const scene = makeScene({ ...SCENE, seed: 3, fromMidi: 60, toMidi: 60 });
  const measure: MeasureTake = () => ({ found: false, reason: 'speech', detail: 'the pitch glides' });
  const recording = createSurveyRecording(RATE, { ...OPTIONS, measure });
  recording.push(scene.samples);
  const survey = recording.finish();
  expect(survey.readings).toEqual([]);
  expect(survey.warnings).toEqual(['At 0:00.6: speech, no reading (the pitch glides).']);
});

it('a take with missing frames is not usable', () => {
  const scene = makeScene({ ...SCENE, seed: 4, fromMidi: 60, toMidi: 61 });
  const at = scene.notes[0]!.onsetIndex + Math.round(0.8 * RATE);
  const recording = createSurveyRecording(RATE, OPTIONS);
  recording.push(scene.samples.subarray(0, at));
  recording.markHole();
  recording.push(scene.samples.subarray(at + 500));
  const { readings } = recording.finish();
  expect(readings.map(({ quality }) => quality.faults.includes('hole-in-recording'))).toEqual([true, false]);
  expect(readings[0]?.quality.isUsable).toBe(false);
});
