import { describe, expect, it } from 'vitest';
import type { TakeRequest, ThreadRequest } from '../../src/cli/measuringThread.ts';
import { measureTakesInOrder } from '../../src/cli/takesInOrder.ts';
import type { ThreadPool } from '../../src/cli/threadPool.ts';
import type { NoteReading, TakeOutcome } from '../../src/piano/reading.ts';
import type { Segment } from '../../src/survey/takeSplitter.ts';

const OPTIONS = { stringPosition: 0, pitchStandardHz: 440 } as const;

/** A take whose first sample says which note it "is": the measuring below believes it. */
const segmentOf = (midi: number, startSample: number): Segment => ({
  samples: Float32Array.of(midi),
  startSample,
  onsetIndex: 0,
  endedBy: 'decay',
  hasHole: false,
});

function found(midi: number): TakeOutcome {
  return { found: true, reading: { midi, quality: { isUsable: true } } as NoteReading };
}

/** Answers late and out of order. @param measure what a take is found to be */
function slowPool(measure: (request: TakeRequest) => TakeOutcome) {
  const asked: TakeRequest[] = [];
  const pool = {
    threadCount: 2,
    async ask(request: ThreadRequest) {
      if (request.kind !== 'take') throw new Error('only takes are measured here');
      asked.push(request);
      for (let turn = 0; turn < (asked.length * 7) % 5; turn += 1) await Promise.resolve();
      return measure(request);
    },
    close: async () => undefined,
  } as ThreadPool;
  return { pool, asked };
}

describe('measureTakesInOrder', () => {
  /** MIDI 65 alone is taken for the octave above; expected, it is recognised. */
  const octaveError = ({ samples, options }: TakeRequest) => {
    const midi = samples[0] ?? 0;
    return found(midi === 65 && options.expectedMidi !== 65 ? 77 : midi);
  };

  it('lets a walk expect the next note, and measures only those again that were found to be another', async () => {
    const { pool, asked } = slowPool(octaveError);
    const takes = measureTakesInOrder(pool, 1000, OPTIONS);
    for (const [index, midi] of [60, 61, 62, 63, 64, 65, 66].entries()) await takes.add(segmentOf(midi, 1000 * index));
    const heard = await takes.finish();
    expect(heard.map(({ outcome }) => (outcome.found ? outcome.reading.midi : 0))).toEqual([
      60, 61, 62, 63, 64, 65, 66,
    ]);
    expect(heard.map(({ onsetS }) => onsetS)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(asked.map(({ options }) => options.expectedMidi).filter((midi) => midi !== undefined)).toEqual([65]);
  });

  it('expects nothing where nobody walks', async () => {
    const { pool, asked } = slowPool(octaveError);
    const takes = measureTakesInOrder(pool, 1000, OPTIONS);
    for (const [index, midi] of [60, 72, 48, 65].entries()) await takes.add(segmentOf(midi, 1000 * index));
    const heard = await takes.finish();
    expect(heard.map(({ outcome }) => (outcome.found ? outcome.reading.midi : 0))).toEqual([60, 72, 48, 77]);
    expect(asked).toHaveLength(4);
  });

  it('passes a failure on once, at the end', async () => {
    const { pool } = slowPool(() => {
      throw new Error('the thread died');
    });
    const takes = measureTakesInOrder(pool, 1000, OPTIONS);
    await takes.add(segmentOf(60, 0));
    await takes.add(segmentOf(61, 1000));
    await expect(takes.finish()).rejects.toThrow('the thread died');
  });
});
