import { describe, expect, it } from 'vitest';
import type { InstrumentId, SurveyId, TakeId, VisitId } from '../../../src/piano/ids.ts';
import type { Take, TakeSound } from '../../../src/piano/instrument.ts';
import type { FurtherReading } from '../../../src/records/takeWrites.ts';
import { againSentences } from '../../../src/screens/survey/againSentences.ts';
import { measureSurveyAgain, type SurveyAgain } from '../../../src/screens/survey/measureSurveyAgain.ts';
import { texts } from '../../../src/ui/texts.ts';
import type { TakeAsker } from '../../../src/workers/askTakeWorker.ts';
import type { MeasureAgainWork } from '../../../src/workers/takeWork.ts';
import { readingAt } from '../plainReading.ts';

const takes: Take[] = [60, 61, 62, 63].map((midi) => ({
  id: `take ${midi}` as TakeId,
  surveyId: 's' as SurveyId,
  visitId: 'v' as VisitId,
  instrumentId: 'i' as InstrumentId,
  midi,
  stringPosition: 2,
  recordedAt: '2030-01-01T10:00:00.000Z',
  isKept: true,
  reading: readingAt(midi, 0),
}));
const soundOf = async (id: TakeId) =>
  ({ id, bytes: new Uint8Array(1), onsetIndex: 0, startS: 0 }) as unknown as TakeSound;

/** What each note reads the second time: sharp by so many cents; null: nothing found; undefined: the sound is damaged. */
function askerOf(changes: Readonly<Record<number, number | null>>): TakeAsker {
  const ask = async ({ midi }: MeasureAgainWork) => {
    const change = changes[midi];
    if (change === undefined) throw new Error('damaged');
    if (change === null) return { found: false, reason: 'no-pitch', detail: '' };
    return { found: true, reading: readingAt(midi, change) };
  };
  return { ask, giveUp: () => undefined } as unknown as TakeAsker;
}

function setUp(over: Partial<SurveyAgain> = {}) {
  const written: FurtherReading[] = [];
  const addReadings = async (further: readonly FurtherReading[]) => {
    written.push(...further);
    return { written: true } as const;
  };
  const again: SurveyAgain = {
    records: { sound: soundOf, addReadings },
    askers: [askerOf({ 60: 0.0002, 61: -0.25, 62: null })],
    onProgress: () => undefined,
    isStopped: () => false,
    ...over,
  };
  return { again, written };
}

describe('measureSurveyAgain', () => {
  it('writes a reading for each sound that gives one, and tells what became of all', async () => {
    const { again, written } = setUp();
    const summary = await measureSurveyAgain(takes, again);
    expect(written.map(({ takeId }) => takeId)).toEqual(['take 60', 'take 61']);
    expect(written[0]?.measured.programVersion).toMatch(/^\d+\.\d+\.\d+/);
    expect(summary).toMatchObject({ doneCount: 2, notFoundMidi: [62], faultyCount: 1, writeFault: null });
    expect(summary.largest?.midi).toBe(61);
    expect(summary.largest?.changeCents).toBeCloseTo(-0.25, 9);
    const told = againSentences(summary, false).join(' ');
    expect(told).toContain('−0.250');
    expect(told).toContain('D4');
  });

  it('says that nothing changed where the three decimals would show nothing', async () => {
    const { again } = setUp({ askers: [askerOf({ 60: 0.0002, 61: -0.0004, 62: 0, 63: 0 })] });
    const summary = await measureSurveyAgain(takes, again);
    expect(againSentences(summary, false)).toEqual([texts.sound.again.done(4), texts.sound.again.unchanged]);
  });

  it('stops between two takes when told to, and what was written stays', async () => {
    let triedCount = 0;
    const { again, written } = setUp({
      onProgress: (count) => {
        triedCount = count;
      },
      isStopped: () => triedCount >= 1,
    });
    expect(await measureSurveyAgain(takes, again)).toMatchObject({ doneCount: 1, faultyCount: 0 });
    expect(written).toHaveLength(1);
  });

  it('counts nothing as done where the readings could not be written', async () => {
    const full = { written: false, reason: 'storage-full', message: '' } as const;
    const { again } = setUp({ records: { sound: soundOf, addReadings: async () => full } });
    expect(await measureSurveyAgain(takes, again)).toMatchObject({ doneCount: 0, largest: null, writeFault: full });
  });
});
