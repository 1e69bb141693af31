import { describe, expect, it } from 'vitest';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { createSurveyRecording } from '../../src/survey/surveyRecording.ts';
import { doTakeWork } from '../../src/workers/doTakeWork.ts';
import { type Recording, readRecordings } from '../../src/workers/readRecordings.ts';
import type { RecordingsReport } from '../../src/workers/recordingsMessages.ts';
import type { MeasuredSegment } from '../../src/workers/takeWork.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';

const SAMPLE_RATE_HZ = 22050;
const SETTINGS = { pitchStandardHz: 440, stringPosition: 2 } as const;

function played(midis: readonly number[], leadS = 0.5): Float32Array {
  return synthesizeSurvey({
    notes: midis.map((midi, index) => ({ strings: [{ midi, offsetCents: index - 2 }], holdS: 1.2 })),
    sampleRateHz: SAMPLE_RATE_HZ,
    gapS: 0.25,
    leadS,
    noiseDbfs: -75,
    seed: 31,
  }).samples;
}

function recordingOf(name: string, samples: Float32Array): Recording {
  return { name, source: bytesAsSource(writeWave(samples, SAMPLE_RATE_HZ, 'float')) };
}

async function read(recordings: readonly Recording[], mostOpen = 1): Promise<RecordingsReport[]> {
  const reports: RecordingsReport[] = [];
  await readRecordings(recordings, {
    settings: SETTINGS,
    measure: (segment, expectedMidi) =>
      doTakeWork({ kind: 'measure', segment, expectedMidi }) as Promise<MeasuredSegment>,
    report: (report) => reports.push(report),
    mostUnderWay: 4,
    mostOpen,
  });
  return reports;
}

const readingsOf = (reports: readonly RecordingsReport[]) =>
  reports.flatMap((report) =>
    report.kind === 'take' && report.take.outcome.found ? [report.take.outcome.reading] : [],
  );

describe('readRecordings', () => {
  const survey = played([60, 61, 62, 63, 64]);

  it('gives the readings that the whole stream gives at once, in the order played', async () => {
    const recording = createSurveyRecording(SAMPLE_RATE_HZ, {
      ...SETTINGS,
      compass: { lowestMidi: 21, highestMidi: 108 },
    });
    recording.push(survey);
    const readings = readingsOf(await read([recordingOf('five.wav', survey)]));
    expect(readings.map(({ midi }) => midi)).toEqual([60, 61, 62, 63, 64]);
    expect(readings).toEqual(recording.finish().readings);
  });

  it('hands out the sound of each take with the place of its strike', async () => {
    const takes = (await read([recordingOf('five.wav', survey)])).flatMap((report) =>
      report.kind === 'take' ? [report.take] : [],
    );
    expect(takes).toHaveLength(5);
    for (const { samples, startS, onsetS, durationS } of takes) {
      expect(durationS).toBeCloseTo(samples.length / SAMPLE_RATE_HZ, 9);
      const from = Math.round(startS * SAMPLE_RATE_HZ);
      expect(samples.subarray(0, 500)).toEqual(survey.subarray(from, from + 500));
      expect(onsetS - startS).toBeLessThanOrEqual(0.3001);
    }
  });

  it('tells how far it is, up to the end and never beyond', async () => {
    const shares = (await read([recordingOf('five.wav', survey)])).flatMap((report) =>
      report.kind === 'progress' ? [report.share] : [],
    );
    expect(shares.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
  });

  it('names a file that is no sound, and reads the others, however many are open at once', async () => {
    const text = new Uint8Array(Buffer.from('The hammers were voiced in spring.\n'.repeat(40)));
    const files = [
      recordingOf('low.wav', played([48])),
      { name: 'remarks.wav', source: bytesAsSource(text) },
      { name: 'nothing.wav', source: bytesAsSource(new Uint8Array(0)) },
      recordingOf('high.wav', played([72])),
    ];
    for (const mostOpen of [1, 2]) {
      const reports = await read(files, mostOpen);
      const unreadable = reports.flatMap((report) => (report.kind === 'unreadable' ? [report] : []));
      expect(unreadable.map(({ fileName }) => fileName).sort()).toEqual(['nothing.wav', 'remarks.wav']);
      for (const { message } of unreadable) expect(message.length).toBeGreaterThan(20);
      expect(
        readingsOf(reports)
          .map(({ midi }) => midi)
          .sort(),
      ).toEqual([48, 72]);
    }
  });

  it('keeps the takes before the place where a file breaks off, and says that it does', async () => {
    const { name, source } = recordingOf('five.wav', survey);
    const limit = Math.round(source.byteCount * 0.8);
    const breaking: Recording = {
      name,
      source: {
        byteCount: source.byteCount,
        read: async (offset, length) => {
          if (offset + length > limit) throw new DOMException('The card was taken out.', 'NotReadableError');
          return source.read(offset, length);
        },
      },
    };
    const reports = await read([breaking]);
    expect(reports.filter(({ kind }) => kind === 'unreadable')).toMatchObject([
      { fileName: 'five.wav', message: expect.stringContaining('The card was taken out.') },
    ]);
  });

  it('measures a file that begins inside its tone, and says which file holds no note', async () => {
    const tone = played([60], 0);
    const reports = await read([
      recordingOf('cut.wav', tone.subarray(Math.round(0.2 * SAMPLE_RATE_HZ))),
      recordingOf('silence.wav', new Float32Array(SAMPLE_RATE_HZ)),
    ]);
    expect(readingsOf(reports).map(({ midi }) => midi)).toEqual([60]);
    expect(reports.filter(({ kind }) => kind === 'read')).toMatchObject([
      { fileName: 'cut.wav', noteCount: 1 },
      { fileName: 'silence.wav', noteCount: 0 },
    ]);
  });

  it('passes on what the measuring breaks on', async () => {
    const failing = readRecordings([recordingOf('five.wav', survey)], {
      settings: SETTINGS,
      measure: () => Promise.reject(new Error('out of memory')),
      report: () => undefined,
      mostUnderWay: 2,
      mostOpen: 1,
    });
    await expect(failing).rejects.toThrow('out of memory');
  });
});
