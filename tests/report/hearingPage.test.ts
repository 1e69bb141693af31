import { describe, expect, it } from 'vitest';
import { outlineOf, positionInPicture } from '../../src/report/beatPicture.ts';
import { hearingFile } from '../../src/report/hearingPage.ts';
import { englishReportWords } from '../../src/report/words.ts';

const SOUND = {
  beats: '1.00 beats a second, 6 dB deep',
  durationS: 2,
  envelope: [
    { timeS: 0.1, levelDb: 0 },
    { timeS: 1.9, levelDb: -30 },
  ],
  outline: outlineOf(
    Float32Array.from({ length: 1000 }, (_, index) => Math.sin(index)),
    100,
  ),
};
const sounds = [
  { ...SOUND, title: 'then', dataUri: 'data:audio/wav;base64,AAAA' },
  { ...SOUND, title: 'now', durationS: 4, dataUri: 'data:audio/wav;base64,BBBB' },
];

describe('hearingFile', () => {
  const page = {
    title: 'C5 of "Grand" <script>alert(1)</script>',
    subtitle: '',
    demonstration: null,
    sounds,
    picture: { seconds: 's', decibels: 'dB', summary: 'two' },
    sentences: [],
  };
  const html = hearingFile(page, englishReportWords);

  it('holds both sounds and one script of its own, and nothing from outside', () => {
    expect(html.match(/src="[^"]*"/g)).toEqual(sounds.map(({ dataUri }) => `src="${dataUri}"`));
    expect(html.match(/<script>/g)).toHaveLength(1);
    expect(html).toContain('&lt;script&gt;alert(1)');
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|url\(|@import|<link/);
  });
});

describe('the play position', () => {
  it('goes from the left of the picture to the right in the longer sound’s time, in the sound’s own panel', () => {
    const [start, half, end] = [0, 2, 4].map((timeS) => positionInPicture(sounds, 1, timeS).x);
    expect((end! - start!) / (half! - start!)).toBeCloseTo(2, 9);
    expect(end).toBeLessThan(1);
    expect(positionInPicture(sounds, 1, 0).top).toBeGreaterThan(
      positionInPicture(sounds, 0, 0).top + positionInPicture(sounds, 0, 0).height,
    );
  });
});

it('outlines a sound by its lowest and highest samples', () => {
  const samples = Float32Array.from([0, 0.5, -0.25, 0, 0.125, -1, 0, 0]);
  expect(outlineOf(samples, 2)).toEqual([
    { low: -0.25, high: 0.5 },
    { low: -1, high: 0.125 },
  ]);
  expect(outlineOf(samples, 100)).toHaveLength(8);
});
