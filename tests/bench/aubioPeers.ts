/** The pitch estimators of aubio, through its program aubiopitch where it is installed (Debian: aubio-tools). */
import { execFile, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { median } from '../support/statistics.ts';

export const AUBIO_METHODS = ['yin', 'yinfft', 'yinfast', 'mcomb', 'fcomb', 'schmitt', 'specacf'] as const;
export type AubioMethod = (typeof AUBIO_METHODS)[number];

export function hasAubio(): boolean {
  return spawnSync('aubiopitch', ['--help']).error === undefined;
}

/** The sustained part of one note. */
export type Stretch = { readonly samples: Float32Array; readonly sampleRateHz: number; readonly midi: number };

/** For each stretch the median of the frames that lie wholly within it; null where none gave a pitch. */
export async function aubioPitches(
  stretches: readonly Stretch[],
  method: AubioMethod,
  folder: string,
): Promise<(number | null)[]> {
  const pitches: (number | null)[] = stretches.map(() => null);
  for (const bufferLength of new Set(stretches.map(({ midi }) => bufferLengthFor(midi)))) {
    const indexes = stretches.flatMap(({ midi }, index) => (bufferLengthFor(midi) === bufferLength ? [index] : []));
    const own = await pitchesOf(
      indexes.map((index) => stretches[index]!),
      method,
      bufferLength,
      folder,
    );
    for (const [row, index] of indexes.entries()) pitches[index] = own[row] ?? null;
  }
  return pitches;
}

/** At 48 kHz: five periods of the lowest note of each part of the compass at least. */
function bufferLengthFor(midi: number): number {
  if (midi < 48) return 8192;
  return midi < 72 ? 4096 : 2048;
}

async function pitchesOf(stretches: readonly Stretch[], method: AubioMethod, bufferLength: number, folder: string) {
  const file = join(folder, `stretches-${method}-${bufferLength}.wav`);
  const { sampleRateHz } = stretches[0]!;
  writeFileSync(file, writeWave(joined(stretches), sampleRateHz, '16-bit'));
  const hopLength = bufferLength / 4;
  const frames = await aubioFrames(file, method, bufferLength, hopLength);
  let start = 0;
  return stretches.map(({ samples }) => {
    const [from, to] = [start + bufferLength, start + samples.length];
    start = to;
    const inside = frames.filter(({ timeS, hz }) => {
      const frameEnd = timeS * sampleRateHz + hopLength; // a line's time is where its newest hop begins
      return hz > 0 && frameEnd >= from && frameEnd <= to;
    });
    return median(inside.map(({ hz }) => hz)) ?? null;
  });
}

function joined(stretches: readonly Stretch[]): Float32Array {
  const all = new Float32Array(stretches.reduce((sum, { samples }) => sum + samples.length, 0));
  let start = 0;
  for (const { samples } of stretches) {
    const largest = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 1e-9);
    all.set(
      samples.map((value) => (0.8 * value) / largest),
      start,
    );
    start += samples.length;
  }
  return all;
}

export async function aubioFrames(file: string, method: AubioMethod, bufferLength: number, hopLength: number) {
  const args = ['-i', file, '-p', method, '-B', String(bufferLength), '-H', String(hopLength)];
  const { stdout } = await promisify(execFile)('aubiopitch', args, { maxBuffer: 2 ** 28 });
  return stdout
    .trim()
    .split('\n')
    .map((line) => {
      const [timeS, hz] = line.trim().split(/\s+/).map(Number);
      return { timeS: timeS ?? 0, hz: hz ?? 0 };
    });
}
