import { describe, expect, it } from 'vitest';
import { newTones, partialBins } from '../../src/survey/newTones.ts';
import { createToneFrameReader } from '../../src/survey/toneFrames.ts';
import { seededRandom } from '../support/seededRandom.ts';

const RATE = 48000;
const LENGTH = 8192;
const reader = createToneFrameReader(RATE);

type Tone = { readonly hz: number; readonly levelDbfs: number };

function frameOf(tones: readonly Tone[], seed: number, noiseDbfs = -60) {
  const random = seededRandom(seed);
  const samples = Float32Array.from({ length: LENGTH }, (_, index) => {
    const sound = tones.reduce(
      (sum, { hz, levelDbfs }) => sum + 10 ** (levelDbfs / 20) * Math.sin((2 * Math.PI * hz * index) / RATE + hz),
      0,
    );
    return sound + 10 ** (noiseDbfs / 20) * random.normal();
  });
  return reader.read(samples);
}

const hzOf = (bin: number) => bin * reader.binHz;

describe('the long frame', () => {
  it('shows a full-scale sine at 0 dBFS', () => {
    const hz = 100 * reader.binHz;
    const level = frameOf([{ hz, levelDbfs: 0 }], 1).levelsDbfs[100]!;
    expect(Math.abs(level)).toBeLessThan(0.1);
  });

  it('knows the level of white noise to 3 dB', () => {
    // White noise of RMS σ under a Hann window of N samples: power 4·1.5·σ²/N in a bin where a sine of amplitude 1 gives 1.
    const expected = -60 + 10 * Math.log10(6 / LENGTH);
    expect(Math.abs(frameOf([], 2).floorDbfs[100]! - expected)).toBeLessThan(3);
  });
});

describe('partialBins', () => {
  it('finds the partials and nothing in the noise', () => {
    const tones = [220, 440, 661, 885].map((hz) => ({ hz, levelDbfs: -40 }));
    const found = partialBins(frameOf(tones, 3)).map(hzOf);
    expect(found).toHaveLength(4);
    for (const [index, { hz }] of tones.entries()) expect(Math.abs(found[index]! - hz)).toBeLessThan(reader.binHz);
  });

  it('tells the partials of the lowest note apart', () => {
    const tones = Array.from({ length: 40 }, (_, index) => ({ hz: 27.5 * (index + 1), levelDbfs: -30 }));
    const found = partialBins(frameOf(tones, 4)).map(hzOf);
    const near = tones.filter(({ hz }) => found.some((foundHz) => Math.abs(foundHz - hz) < reader.binHz));
    expect(near.length).toBeGreaterThanOrEqual(38);
  });

  it.each([11, 12, 13, 14, 15])('finds nothing in noise alone (seed %d)', (seed) => {
    expect(partialBins(frameOf([], seed))).toEqual([]);
  });
});

describe('newTones', () => {
  const before = [
    { hz: 220, levelDbfs: -20 },
    { hz: 440, levelDbfs: -30 },
  ];

  it('finds the partial that began beside those that sounded before', () => {
    const now = frameOf([...before, { hz: 330, levelDbfs: -40 }], 21);
    const { bins } = newTones(now, [frameOf(before, 22), frameOf(before, 23)]);
    expect(bins.map((bin) => Math.round(hzOf(bin) / reader.binHz))).toEqual([Math.round(330 / reader.binHz)]);
  });

  it('takes no partial for new that was as strong in one of the frames before, as in a beat', () => {
    const weak = before.map(({ hz }) => ({ hz, levelDbfs: -60 }));
    expect(newTones(frameOf(before, 24), [frameOf(before, 25), frameOf(weak, 26)]).bins).toEqual([]);
  });

  it('takes no rise for new that a beat can do, and counts what goes beyond it', () => {
    const by = (riseDb: number) =>
      newTones(frameOf([{ hz: 220, levelDbfs: -40 + riseDb }], 27), [frameOf([{ hz: 220, levelDbfs: -40 }], 28)]).sumDb;
    expect(by(6)).toBe(0);
    expect(by(12)).toBeGreaterThan(4);
    expect(by(12)).toBeLessThan(6);
  });

  it('finds everything new where nothing was before', () => {
    expect(newTones(frameOf(before, 29), []).bins).toHaveLength(2);
  });
});
