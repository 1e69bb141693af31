/** The sound files that the speed is measured on. */
import { closeSync, openSync, writeSync } from 'node:fs';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { type SyntheticSurvey, synthesizeSurvey } from '../support/syntheticSurvey.ts';
import { randomString } from './randomString.ts';

export const SURVEY_RATE_HZ = 48000;
export const SECONDS_PER_NOTE = 5;

/** One after another, 4.6 s held and 0.4 s pause, noise some 50 dB below the tones. */
export function surveySound(notes: readonly number[]): SyntheticSurvey {
  const random = seededRandom(800_000);
  return synthesizeSurvey({
    notes: notes.map((midi) => ({
      strings: [randomString(midi, 10, random)],
      holdS: SECONDS_PER_NOTE - 0.4,
      peak: 0.2 + 0.3 * random.uniform(),
      hammerNoiseDb: -25,
    })),
    sampleRateHz: SURVEY_RATE_HZ,
    gapS: 0.4,
    noiseDbfs: -66,
    seed: 800_001,
  });
}

/** The same sound over and over in one file, written piece by piece. */
export function writeRepeated(file: string, samples: Float32Array, count: number): void {
  const once = writeWave(samples, SURVEY_RATE_HZ, '16-bit');
  const data = once.subarray(HEADER_BYTES);
  const header = once.slice(0, HEADER_BYTES);
  const view = new DataView(header.buffer);
  view.setUint32(4, HEADER_BYTES - 8 + count * data.length, true);
  view.setUint32(HEADER_BYTES - 4, count * data.length, true);
  const handle = openSync(file, 'w');
  writeSync(handle, header);
  for (let time = 0; time < count; time += 1) writeSync(handle, data);
  closeSync(handle);
}

/** Of a 16-bit file as writeWave writes it. */
const HEADER_BYTES = 44;
