/** A survey of many notes as a file for the microphone, and what the command line makes of the same file. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeWave } from '../../../src/files/audio/writeWave.ts';
import { synthesizeSurvey } from '../../support/syntheticSurvey.ts';

/** The fake device's own rate, so that it hands over the file's samples as they are. */
const SAMPLE_RATE_HZ = 44100;
/** The fake device plays 10 ms buffers; a file of whole buffers begins anew without a seam. */
const BUFFER_SAMPLES = 441;

/** From A0 to A6 in steps of three and four semitones: every register is in it. */
export const PLAYED_MIDI = [
  21, 24, 28, 31, 35, 38, 42, 45, 48, 52, 55, 59, 62, 66, 69, 72, 76, 79, 83, 86, 90, 93,
] as const;

export type PlayedSurvey = {
  readonly path: string;
  readonly bytes: Buffer;
  readonly durationS: number;
  /** Cents by MIDI number, as the command line reads them from the file. */
  readonly commandLineCents: ReadonlyMap<number, number>;
  readonly remove: () => void;
};

export function playSurvey(): PlayedSurvey {
  const { samples } = synthesizeSurvey({
    notes: PLAYED_MIDI.map((midi, index) => ({
      strings: [{ midi, offsetCents: ((index * 7) % 13) - 6 }],
      holdS: 1.2,
    })),
    sampleRateHz: SAMPLE_RATE_HZ,
    gapS: 0.15,
    leadS: 1,
    tailS: 1,
    noiseDbfs: -75,
    seed: 2024,
  });
  const whole = samples.subarray(0, samples.length - (samples.length % BUFFER_SAMPLES));
  const folder = mkdtempSync(join(tmpdir(), 'microphone-'));
  const path = join(folder, 'survey.wav');
  const bytes = Buffer.from(writeWave(whole, SAMPLE_RATE_HZ, 'float'));
  writeFileSync(path, bytes);
  return {
    path,
    bytes,
    durationS: whole.length / SAMPLE_RATE_HZ,
    commandLineCents: surveyByCommandLine(path),
    remove: () => rmSync(folder, { recursive: true }),
  };
}

type SurveyJson = { readings: { midi: number; cents: number; quality: { usable: boolean } }[] };

function surveyByCommandLine(path: string): ReadonlyMap<number, number> {
  const runCli = fileURLToPath(new URL('../../../tools/runCli.mjs', import.meta.url));
  const run = spawnSync(process.execPath, [runCli, 'survey', path, '--json'], { encoding: 'utf8', maxBuffer: 1e9 });
  if (run.status !== 0) throw new Error(`the command line ended with ${run.status}: ${run.stderr}`);
  const { readings } = JSON.parse(run.stdout) as SurveyJson;
  return new Map(readings.filter((reading) => reading.quality.usable).map(({ midi, cents }) => [midi, cents]));
}
