/** The recordings worker's work, apart from the messages: files in; takes, progress and what is wrong with a file out. */
import { findStrike } from '../analysis/tone/takeBounds.ts';
import { type AudioStream, joinBlocks } from '../files/audio/audioStream.ts';
import type { ByteSource } from '../files/audio/byteSource.ts';
import { openAudio } from '../files/audio/openAudio.ts';
import { createTakeSplitter, type Segment } from '../survey/takeSplitter.ts';
import { createTakesInOrder } from '../survey/takesInOrder.ts';
import type { ListeningSettings, SegmentToMeasure } from './listeningMessages.ts';
import { takeOf } from './measureSegment.ts';
import type { RecordingsReport } from './recordingsMessages.ts';
import type { MeasuredSegment } from './takeWork.ts';

export type Recording = { readonly name: string; readonly source: ByteSource };

export type RecordingsReader = {
  readonly settings: ListeningSettings;
  readonly measure: (segment: SegmentToMeasure, expectedMidi: number | null) => Promise<MeasuredSegment>;
  readonly report: (report: RecordingsReport) => void;
  /** Takes that may be under way at once, and files that may be open at once. */
  readonly mostUnderWay: number;
  readonly mostOpen: number;
};

/** Where no strike was found, so much of the beginning is measured as one take: the file may begin inside the tone. */
const WHOLE_S = 60;

/** Every file to its end, or to where it breaks off; one that cannot be read does not stop the others. */
export async function readRecordings(recordings: readonly Recording[], reader: RecordingsReader): Promise<void> {
  const waiting = [...recordings];
  const allBytes = recordings.reduce((sum, { source }) => sum + source.byteCount, 0);
  let readBytes = 0;
  const count = (byteCount: number) => {
    readBytes += byteCount;
    reader.report({ kind: 'progress', share: allBytes === 0 ? 1 : readBytes / allBytes });
  };
  const readOn = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) await readOne(counted(next, count), reader);
  };
  await Promise.all(Array.from({ length: reader.mostOpen }, readOn));
}

async function readOne({ name, source }: Recording, reader: RecordingsReader): Promise<void> {
  try {
    const outcome = await openAudio(source);
    if (outcome.opened) await hear(name, outcome.audio, reader);
    else reader.report({ kind: 'unreadable', fileName: name, message: outcome.fault.message });
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    const message = `the browser could not read it to its end (${error.message}); copy it to this device and try again`;
    reader.report({ kind: 'unreadable', fileName: name, message });
  }
}

async function hear(fileName: string, audio: AudioStream, reader: RecordingsReader): Promise<void> {
  const { sampleRateHz } = audio;
  const { measure, report, settings } = reader;
  const toMeasure = (segment: Segment) => segmentToMeasure(segment, sampleRateHz, settings);
  let noteCount = 0;
  const takes = createTakesInOrder<MeasuredSegment>({
    measure: (segment, expectedMidi) => measure(toMeasure(segment), expectedMidi ?? null),
    onTake: (segment, { outcome, hasHole }) => {
      if (outcome.found) noteCount += 1;
      report({ kind: 'take', fileName, take: takeOf({ ...toMeasure(segment), hasHole }, outcome) });
    },
    mostUnderWay: reader.mostUnderWay,
  });
  for await (const segment of segmentsOf(audio)) await takes.add(segment);
  await takes.finish();
  const warnings = audio.warnings.map((warning) => warning.message);
  report({ kind: 'read', fileName, sampleRateHz, noteCount, warnings });
}

async function* segmentsOf(audio: AudioStream): AsyncGenerator<Segment, void> {
  const { sampleRateHz } = audio;
  const splitter = createTakeSplitter(sampleRateHz);
  const beginning: Float32Array[] = [];
  let [heardCount, strikeCount] = [0, 0];
  for await (const block of audio.blocks()) {
    for (const segment of splitter.push(block)) {
      strikeCount += 1;
      yield segment;
    }
    if (strikeCount > 0) beginning.length = 0;
    else if (heardCount < WHOLE_S * sampleRateHz) beginning.push(block);
    heardCount += block.length;
  }
  const last = splitter.finish();
  yield* last;
  if (strikeCount + last.length === 0) yield* wholeOf(joinBlocks(beginning), sampleRateHz);
}

/** Nothing where there is nothing but silence. */
function wholeOf(samples: Float32Array, sampleRateHz: number): Segment[] {
  const onsetIndex = findStrike(samples, sampleRateHz);
  if (onsetIndex === undefined) return [];
  return [{ samples, startSample: 0, onsetIndex, endedBy: 'end-of-recording', hasHole: false }];
}

function segmentToMeasure(segment: Segment, sampleRateHz: number, settings: ListeningSettings): SegmentToMeasure {
  const { samples, startSample, onsetIndex, endedBy, hasHole } = segment;
  const startS = startSample / sampleRateHz;
  const own = samples as Float32Array<ArrayBuffer>;
  return {
    kind: 'segment',
    samples: own,
    sampleRateHz,
    startS,
    onsetIndex,
    endedBy,
    hasHole,
    settings,
    settingsNumber: 0,
  };
}

/** Counts how far the file has been read; going back, as for its head, counts nothing. */
function counted({ name, source }: Recording, count: (byteCount: number) => void): Recording {
  let furthest = 0;
  return {
    name,
    source: {
      byteCount: source.byteCount,
      read: async (offset, length) => {
        const bytes = await source.read(offset, length);
        const end = offset + bytes.length;
        if (end > furthest) {
          count(end - furthest);
          furthest = end;
        }
        return bytes;
      },
    },
  };
}
