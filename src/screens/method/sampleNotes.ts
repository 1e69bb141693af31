/** Two recordings that come with the program, measured as any take is; what is true of them is in the files beside them. */
import a4Truth from '../../../sample-audio/a4-one-string.truth.json';
import c6Truth from '../../../sample-audio/c6-false-beat.truth.json';
import { findStrike } from '../../analysis/tone/takeBounds.ts';
import { bytesAsSource } from '../../files/audio/byteSource.ts';
import { openWave } from '../../files/audio/openWave.ts';
import type { NoteReading } from '../../piano/reading.ts';
import { sharedTakeWorker } from '../../workers/sharedTakeWorker.ts';

export type SampleTruth = {
  readonly cents: number;
  readonly falseBeats: readonly { readonly partialNumber: number; readonly splitHz: number }[];
};
type Sample = { readonly sound: URL; readonly truths: readonly SampleTruth[] };

const SAMPLES = {
  a4: { sound: new URL('../../../sample-audio/a4-one-string.wav', import.meta.url), truths: a4Truth },
  c6: { sound: new URL('../../../sample-audio/c6-false-beat.wav', import.meta.url), truths: c6Truth },
} satisfies Record<string, Sample>;

export type SampleNote = {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRateHz: number;
  readonly onsetIndex: number;
  readonly reading: NoteReading;
  readonly truth: SampleTruth;
};

/** @throws {Error} where a file of the program is missing or the sound gives no reading */
export function measureSample(name: keyof typeof SAMPLES): Promise<SampleNote> {
  const known = measuredSamples.get(name);
  if (known) return known;
  const measuring = measureAnew(name);
  measuredSamples.set(name, measuring);
  measuring.catch(() => measuredSamples.delete(name));
  return measuring;
}

/** Once for the life of the page: a recording of the program's own never changes. */
const measuredSamples = new Map<string, Promise<SampleNote>>();

async function measureAnew(name: keyof typeof SAMPLES): Promise<SampleNote> {
  const { sound, truths }: Sample = SAMPLES[name];
  const response = await fetch(sound);
  if (!response.ok) throw new Error(`the file could not be loaded (${response.status})`);
  const { samples, sampleRateHz } = await decoded(new Uint8Array(await response.arrayBuffer()));
  const [known] = truths;
  const onsetIndex = findStrike(samples, sampleRateHz);
  if (onsetIndex === undefined || known === undefined) throw new Error('the recording is silent');
  const reading = await measured(samples.slice(), sampleRateHz, onsetIndex);
  return { samples, sampleRateHz, onsetIndex, reading, truth: known };
}

/** Off the page's own thread. @throws {Error} where there is no note in it */
export async function measured(
  samples: Float32Array<ArrayBuffer>,
  sampleRateHz: number,
  onsetIndex: number,
): Promise<NoteReading> {
  const settings = { pitchStandardHz: 440, stringPosition: 2 } as const;
  const segment = {
    kind: 'segment',
    samples,
    sampleRateHz,
    startS: 0,
    onsetIndex,
    settings,
    settingsNumber: 0,
  } as const;
  const { outcome } = await sharedTakeWorker().ask(
    { kind: 'measure', segment: { ...segment, endedBy: 'end-of-recording', hasHole: false }, expectedMidi: null },
    [samples.buffer],
  );
  if (!outcome.found) throw new Error(outcome.detail);
  return outcome.reading;
}

async function decoded(bytes: Uint8Array): Promise<{ samples: Float32Array<ArrayBuffer>; sampleRateHz: number }> {
  const opened = await openWave(bytesAsSource(bytes));
  if (!opened.opened) throw new Error(opened.fault.message);
  const { audio } = opened;
  const blocks: Float32Array[] = [];
  for await (const block of audio.blocks()) blocks.push(block);
  const samples = new Float32Array(blocks.reduce((sum, block) => sum + block.length, 0));
  let at = 0;
  for (const block of blocks) {
    samples.set(block, at);
    at += block.length;
  }
  return { samples, sampleRateHz: audio.sampleRateHz };
}
