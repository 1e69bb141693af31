import { describe, expect, it } from 'vitest';
import { createHearing } from '../../src/workers/hearing.ts';
import type {
  EarlyToMeasure,
  ListeningReport,
  ListeningSettings,
  SegmentToMeasure,
} from '../../src/workers/listeningMessages.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';

const SAMPLE_RATE_HZ = 44100;
const BLOCK = 2048;
const SETTINGS: ListeningSettings = { pitchStandardHz: 440, stringPosition: 0 };
const { samples, truth } = synthesizeSurvey({
  notes: [60, 62, 64].map((midi) => ({ strings: [{ midi }], holdS: 1.6 })),
  sampleRateHz: SAMPLE_RATE_HZ,
  gapS: 0.4,
  leadS: 1,
  tailS: 1,
  noiseDbfs: -75,
  seed: 5,
});

function hearingOf() {
  const reports: ListeningReport[] = [];
  const segments: SegmentToMeasure[] = [];
  const early: EarlyToMeasure[] = [];
  let nowMs = 0;
  const hearing = createHearing(SAMPLE_RATE_HZ, SETTINGS, {
    report: (report) => reports.push(report),
    measure: (segment) => segments.push(segment),
    measureEarly: (sounding) => early.push(sounding),
    nowMs: () => nowMs,
  });
  /** Blocks from `from` to `to`, their frame count shifted by `shift`. */
  const play = (sound: Float32Array, from = 0, to = sound.length, shift = 0) => {
    for (let at = from; at < to; at += BLOCK) {
      nowMs = (1000 * (at + shift + BLOCK)) / SAMPLE_RATE_HZ;
      hearing.hear({ kind: 'block', firstFrame: at + shift, samples: sound.slice(at, Math.min(to, at + BLOCK)) });
    }
  };
  return { hearing, play, segments, early, reports };
}

const atSecondNote = truth[1]!.onsetIndex + 20_000;
/** 1 s after a strike: the take before has been cut, and enough of this one has been heard. */
const blockAfter = (onsetIndex: number) => Math.ceil((onsetIndex + SAMPLE_RATE_HZ) / BLOCK) * BLOCK;
const second = Math.floor(atSecondNote / BLOCK) * BLOCK;

describe('createHearing', () => {
  it('cuts one take per note and tells strikes, levels, the room and the clock', () => {
    const { hearing, play, segments, reports } = hearingOf();
    play(samples);
    hearing.finish();
    expect(segments.map((segment) => segment.hasHole)).toEqual([false, false, false]);
    for (const [index, { onsetS }] of truth.entries()) {
      const { startS, onsetIndex } = segments[index]!;
      expect(startS + onsetIndex / SAMPLE_RATE_HZ).toBeCloseTo(onsetS, 1);
    }
    const kinds = (kind: ListeningReport['kind']) => reports.filter((report) => report.kind === kind);
    expect(kinds('strike')).toHaveLength(3);
    expect(kinds('level')).toHaveLength(Math.floor(samples.length / (0.1 * SAMPLE_RATE_HZ)));
    expect(kinds('room-level').length).toBeGreaterThan(0);
    expect(kinds('clock')).toHaveLength(1);
    expect(kinds('hole')).toEqual([]);
  });

  it('marks the take in which frames are missing, and no other', () => {
    const { hearing, play, segments, reports } = hearingOf();
    play(samples, 0, second);
    play(samples, second + BLOCK);
    hearing.finish();
    expect(segments.map((segment) => segment.hasHole)).toEqual([false, true, false]);
    expect(reports.filter((report) => report.kind === 'hole')).toEqual([
      { kind: 'hole', cause: 'frames-missing', atS: second / SAMPLE_RATE_HZ, durationS: BLOCK / SAMPLE_RATE_HZ },
    ]);
  });

  it('does not tell of frames that are missing while the device starts', () => {
    const { play, reports } = hearingOf();
    play(samples, 0, 4 * BLOCK);
    play(samples, 4 * BLOCK, second, 20_000);
    expect(reports.filter((report) => report.kind === 'hole')).toEqual([]);
  });

  it('tells of an interruption at any time', () => {
    const { hearing, play, reports } = hearingOf();
    play(samples, 0, 4 * BLOCK);
    hearing.interrupt();
    expect(reports.filter((report) => report.kind === 'hole')).toHaveLength(1);
  });

  it('marks the take into which a device put zeros, and no other', () => {
    const { hearing, play, segments, reports } = hearingOf();
    const holed = new Float32Array(samples.length + 441);
    holed.set(samples.subarray(0, atSecondNote));
    holed.set(samples.subarray(atSecondNote), atSecondNote + 441);
    play(holed);
    hearing.finish();
    expect(segments.map((segment) => segment.hasHole)).toEqual([false, true, false]);
    const holes = reports.filter((report) => report.kind === 'hole');
    expect(holes).toHaveLength(1);
    expect(holes[0]).toMatchObject({ cause: 'zeros-inside-sound', atS: atSecondNote / SAMPLE_RATE_HZ });
    expect(holes[0]?.durationS).toBeCloseTo(0.01, 6);
  });

  it('marks the take in which listening was interrupted, and begins the clock anew', () => {
    const { hearing, play, segments, reports } = hearingOf();
    play(samples, 0, second);
    hearing.interrupt();
    play(samples, second);
    play(samples, 0, samples.length, samples.length);
    hearing.finish();
    expect(segments.map((segment) => segment.hasHole)).toEqual([false, true, false, false, false, false]);
    const clocks = reports.filter((report) => report.kind === 'clock');
    expect(clocks.map((clock) => clock.runNumber)).toEqual([1, 1]);
  });

  it('ends the take at a pause, hears nothing in it, and goes on after it without a hole', () => {
    const { hearing, play, segments, early, reports } = hearingOf();
    play(samples, 0, second);
    hearing.pause();
    const toldBefore = reports.filter((report) => report.kind === 'level').length;
    play(samples, second, second + 40 * BLOCK);
    expect(reports.filter((report) => report.kind === 'level')).toHaveLength(toldBefore);
    hearing.resume();
    const third = truth[2]!.onsetIndex - 10_000;
    play(samples, third, samples.length, 90 * BLOCK);
    hearing.finish();
    expect(segments).toHaveLength(3);
    expect(segments.map((segment) => segment.hasHole)).toEqual([false, false, false]);
    expect(reports.filter((report) => report.kind === 'hole')).toEqual([]);
    // The pause itself does not count: the third note stands where the sound heard before it ends.
    const heardS = (second + truth[2]!.onsetIndex - third) / SAMPLE_RATE_HZ;
    expect(segments[2]!.startS + segments[2]!.onsetIndex / SAMPLE_RATE_HZ).toBeCloseTo(heardS, 1);
    expect(early.at(-1)).toMatchObject({ startS: segments[2]!.startS, onsetIndex: segments[2]!.onsetIndex });
  });

  it('hands on what it heard of each take while it sounds, before the take itself', () => {
    const { hearing, play, segments, early } = hearingOf();
    for (const [index, { onsetIndex, onsetS }] of truth.entries()) {
      play(samples, index === 0 ? 0 : blockAfter(truth[index - 1]!.onsetIndex), blockAfter(onsetIndex));
      expect(segments).toHaveLength(index); // the one before has ended, and this one sounds
      const [own, ...more] = early.filter(({ startS }) => Math.abs(startS + 0.3 - onsetS) < 0.05);
      expect(more).toEqual([]);
      expect(own!.samples.length - own!.onsetIndex).toBeGreaterThanOrEqual(0.8 * SAMPLE_RATE_HZ);
      expect(own!.samples.length - own!.onsetIndex).toBeLessThan(0.9 * SAMPLE_RATE_HZ);
      const start = Math.round(own!.startS * SAMPLE_RATE_HZ);
      expect(own!.samples).toEqual(samples.slice(start, start + own!.samples.length));
    }
    hearing.finish();
    // The first two were struck out by the next note, and asked for once more up to there.
    for (const [index, segment] of segments.entries()) {
      const own = early.filter(({ startS }) => startS === segment.startS);
      expect(own.map(({ onsetIndex }) => onsetIndex)).toEqual(own.map(() => segment.onsetIndex));
      expect(own).toHaveLength(index < 2 ? 2 : 1);
    }
  });

  it('gives a take the settings that held when it was struck', () => {
    const { hearing, play, segments, early } = hearingOf();
    play(samples, 0, second);
    hearing.set({ ...SETTINGS, stringPosition: 3 });
    play(samples, second);
    hearing.finish();
    expect(segments.map((segment) => segment.settings.stringPosition)).toEqual([0, 0, 3]);
    expect(segments.map((segment) => segment.settingsNumber)).toEqual([0, 0, 1]);
    expect(early.at(-1)).toMatchObject({ settings: { stringPosition: 3 }, settingsNumber: 1 });
  });
});
