/** One synthetic survey through the splitter, and through the measuring where the names are asked for. */
import { COMPASS_88 } from '../../src/piano/compass.ts';
import { createSurveyRecording } from '../../src/survey/surveyRecording.ts';
import { makeScene, type SceneOptions } from '../survey/scene.ts';
import { countStrikes, type SplitCount, splitAll } from '../survey/splitScene.ts';

export type SceneInput = { readonly options: SceneOptions };
export type SceneResult = SplitCount & {
  readonly durationS: number;
  /** Names of the notes played that no reading within 50 ms bears. */
  readonly misnamed: readonly { readonly midi: number; readonly heardMidi: number | null; readonly atS: number }[];
};

export function sceneJob({ options }: SceneInput): SceneResult {
  const scene = makeScene(options);
  const { sampleRateHz, samples } = scene;
  const count = countStrikes(scene, splitAll(samples, sampleRateHz));
  const survey = createSurveyRecording(sampleRateHz, { compass: COMPASS_88, stringPosition: 1, pitchStandardHz: 440 });
  survey.push(samples);
  const { readings } = survey.finish();
  const misnamed = scene.notes.flatMap(({ midi, onsetIndex }) => {
    const atS = onsetIndex / sampleRateHz;
    const heard = readings.find((reading) => Math.abs(reading.onsetS - atS) < 0.05);
    return heard?.midi === midi ? [] : [{ midi, heardMidi: heard?.midi ?? null, atS }];
  });
  return { ...count, durationS: samples.length / sampleRateHz, misnamed };
}
