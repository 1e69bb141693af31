/** The one note that a recording holds, whatever silence, knock or second strike comes with it. */
import { type MeasureOptions, measureTake } from '../analysis/tone/measureTake.ts';
import { type AudioStream, joinBlocks } from '../files/audio/audioStream.ts';
import type { NoteReading, TakeOutcome } from '../piano/reading.ts';
import { createTakeSplitter, type Segment } from '../survey/takeSplitter.ts';

export type NoteOfRecording = { readonly reading: NoteReading | null; readonly warnings: readonly string[] };

/** Strikes that are measured before the recording counts as one without a note: each costs time. */
const MOST_TRIED = 3;
/** Where no strike was found, so much of the beginning is measured as a whole. */
const WHOLE_S = 60;

/** Reads the recording to its end. The loudest strike that gives a usable note is taken. */
export async function noteOfRecording(
  audio: AudioStream,
  options: Pick<MeasureOptions, 'pitchStandardHz' | 'stringPosition' | 'midi'>,
): Promise<NoteOfRecording> {
  const { segments, beginning } = await listen(audio);
  const outcomes =
    segments.length > 0
      ? measureLoudest(segments, audio.sampleRateHz, options)
      : [measureTake(beginning, audio.sampleRateHz, options)];
  const readings = outcomes.flatMap((outcome) => (outcome.found ? [outcome.reading] : []));
  const reading = readings.find((candidate) => candidate.quality.isUsable) ?? readings[0] ?? null;
  return { reading, warnings: noteWarnings(reading, outcomes, segments.length) };
}

async function listen(audio: AudioStream) {
  const splitter = createTakeSplitter(audio.sampleRateHz);
  const segments: Segment[] = [];
  const kept: Float32Array[] = [];
  let keptCount = 0;
  for await (const block of audio.blocks()) {
    segments.push(...splitter.push(block));
    if (segments.length === 0 && keptCount < WHOLE_S * audio.sampleRateHz) {
      kept.push(block);
      keptCount += block.length;
    }
  }
  segments.push(...splitter.finish());
  return { segments, beginning: joinBlocks(kept) };
}

/** From the strike with the most energy on, until one gives a usable note. */
function measureLoudest(
  segments: readonly Segment[],
  sampleRateHz: number,
  options: Pick<MeasureOptions, 'pitchStandardHz' | 'stringPosition' | 'midi'>,
): TakeOutcome[] {
  const byEnergy = [...segments].sort((one, other) => energy(other) - energy(one)).slice(0, MOST_TRIED);
  const outcomes: TakeOutcome[] = [];
  for (const { samples, onsetIndex, startSample } of byEnergy) {
    const outcome = measureTake(samples, sampleRateHz, { ...options, onsetIndex, startS: startSample / sampleRateHz });
    outcomes.push(outcome);
    if (outcome.found && outcome.reading.quality.isUsable) break;
  }
  return outcomes;
}

function energy(segment: Segment): number {
  return segment.samples.reduce((sum, sample) => sum + sample * sample, 0);
}

function noteWarnings(reading: NoteReading | null, outcomes: readonly TakeOutcome[], strikeCount: number): string[] {
  if (!reading) {
    const [first] = outcomes;
    const why = first && !first.found ? `${first.reason}: ${first.detail}` : 'no strike was heard';
    return [`no note was found (${why})`];
  }
  if (strikeCount < 2) return [];
  const atS = reading.onsetS.toFixed(2);
  return [
    `${strikeCount} strikes were heard and the one at ${atS} s was measured; use survey for a recording of many notes`,
  ];
}
