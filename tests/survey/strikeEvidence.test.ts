import { describe, expect, it } from 'vitest';
import { createSampleHistory } from '../../src/survey/sampleHistory.ts';
import { createStrikeJudge, type Heard } from '../../src/survey/strikeEvidence.ts';
import { createToneFrameReader } from '../../src/survey/toneFrames.ts';
import { seededRandom } from '../support/seededRandom.ts';

const RATE = 48000;
const HOP = 256;
const reader = createToneFrameReader(RATE);
const judge = createStrikeJudge(RATE, reader);

/** Four seconds of sound in a little noise, heard to the end. */
function heard(sound: (timeS: number) => number, knocksS: readonly number[] = []): Heard {
  const random = seededRandom(1);
  const samples = Float32Array.from({ length: 4 * RATE }, (_, index) => sound(index / RATE) + 1e-4 * random.normal());
  const history = createSampleHistory(samples.length);
  history.append(samples);
  const frames = [];
  for (let endIndex = 32 * HOP; endIndex <= samples.length; endIndex += 4 * HOP)
    frames.push({ endIndex, tones: reader.read(samples.subarray(endIndex - 32 * HOP, endIndex)) });
  return { history, frames, knocks: knocksS.map((atS) => Math.round(atS * RATE)) };
}

const partials = (timeS: number) =>
  [311, 623, 936, 1250].reduce((sum, hz) => sum + 0.05 * Math.sin(2 * Math.PI * hz * timeS + hz), 0);

describe('createStrikeJudge', () => {
  it.each([1.92, 2, 2.06])('finds a strike at 2 s from a guess at %d s', (guessS) => {
    const strike = judge.judge(
      guessS * RATE,
      heard((timeS) => (timeS < 2 ? 0 : partials(timeS))),
    );
    expect(strike!.evidenceDb).toBeGreaterThan(50);
    expect(Math.abs(strike!.index - 2 * RATE)).toBeLessThan(0.003 * RATE);
  });

  it.each([0.3, 0.7, 1.3, 2, 3.1, 5, 8])('finds none in a beat of %d Hz, wherever it is guessed', (rateHz) => {
    const beating = heard((timeS) => partials(timeS) * Math.sin(Math.PI * rateHz * timeS));
    for (let guessS = 1; guessS < 3; guessS += 0.03)
      expect(judge.judge(Math.round(guessS * RATE), beating)).toBeUndefined();
  });

  it('finds none in noise', () => {
    const noise = heard(() => 0);
    for (let guessS = 1; guessS < 3; guessS += 0.1)
      expect(judge.judge(Math.round(guessS * RATE), noise)).toBeUndefined();
  });

  it('finds none where a partial only goes on after a knock', () => {
    const random = seededRandom(2);
    const knock = (timeS: number) => (timeS < 2 ? 0 : 0.4 * random.normal() * Math.exp(-(timeS - 2) / 0.01));
    expect(
      judge.judge(
        2 * RATE,
        heard((timeS) => partials(timeS) + knock(timeS), [2]),
      ),
    ).toBeUndefined();
  });

  it.each([0.006, 0.01])('finds none where the wood rings for a moment, falling by 8.7 dB in %d s', (fadeS) => {
    const wood = (timeS: number) =>
      timeS < 2
        ? 0
        : [190, 430, 820].reduce((sum, hz) => sum + 0.2 * Math.sin(2 * Math.PI * hz * (timeS - 2)), 0) *
          Math.exp(-(timeS - 2) / fadeS);
    expect(
      judge.judge(
        2 * RATE,
        heard((timeS) => partials(timeS) + wood(timeS), [2]),
      ),
    ).toBeUndefined();
  });

  it('takes mains hum at the very beginning for no note, and other partials for one', () => {
    const hum = heard((timeS) => 0.05 * (Math.sin(2 * Math.PI * 50 * timeS) + Math.sin(2 * Math.PI * 100 * timeS)));
    expect(judge.judge(0, hum)).toBeUndefined();
    expect(judge.judge(0, heard(partials))?.index).toBeLessThan(0.005 * RATE);
  });
});
