import { describe, expect, it } from 'vitest';
import { levelView } from '../../../src/listening/levelView.ts';
import {
  deskSettingsToText,
  parseDeskSettings,
  USUAL_DESK_SETTINGS,
} from '../../../src/screens/recording/deskSettings.ts';
import { clickSamples } from '../../../src/screens/recording/keptClick.ts';
import {
  actionOfKey,
  type FootKeys,
  keyLabel,
  LETTERS,
  USUAL_FOOT_KEYS,
} from '../../../src/screens/recording/recordingKeys.ts';

const bare = { ctrlKey: false, metaKey: false, altKey: false, repeat: false };

const press = (key: string, footKeys: FootKeys = USUAL_FOOT_KEYS) => actionOfKey({ ...bare, key }, footKeys);

describe('keys', () => {
  it('each lead to their own action, small or capital', () => {
    for (const [action, letter] of Object.entries(LETTERS)) {
      expect(press(letter)).toBe(action);
      expect(press(letter.toUpperCase())).toBe(action);
    }
  });

  it('with a modifier or held down do nothing, nor do others', () => {
    expect(actionOfKey({ ...bare, key: 'f', ctrlKey: true }, USUAL_FOOT_KEYS)).toBeUndefined();
    expect(actionOfKey({ ...bare, key: 'u', repeat: true }, USUAL_FOOT_KEYS)).toBeUndefined();
    expect(press('x')).toBeUndefined();
  });

  it('of a foot switch do what was chosen, and the rest is left to the browser', () => {
    expect([press('ArrowLeft'), press('ArrowRight')]).toEqual(['back', 'skip']);
    expect([' ', 'Enter', 'PageUp', 'PageDown'].map((key) => press(key))).toEqual(Array(4).fill(undefined));
    const chosen: FootKeys = { ...USUAL_FOOT_KEYS, ' ': 'skip', Enter: 'undo', ArrowRight: 'none' };
    expect([press(' ', chosen), press('Enter', chosen), press('ArrowRight', chosen)]).toEqual([
      'skip',
      'undo',
      undefined,
    ]);
  });

  it('stand on the buttons: the chosen one, else the letter', () => {
    expect([keyLabel('back', USUAL_FOOT_KEYS), keyLabel('pause', USUAL_FOOT_KEYS)]).toEqual(['←', 'P']);
    const chosen: FootKeys = { ...USUAL_FOOT_KEYS, PageDown: 'pause', ArrowLeft: 'none' };
    expect([keyLabel('back', chosen), keyLabel('pause', chosen)]).toEqual(['B', 'PgDn']);
  });
});

describe('the settings for full hands', () => {
  it('come back as they were chosen', () => {
    const chosen = { hasClick: true, footKeys: { ...USUAL_FOOT_KEYS, Enter: 'pause' } } as const;
    expect(parseDeskSettings(deskSettingsToText(chosen))).toEqual(chosen);
  });

  it.each([null, '', '{', '{"hasClick":1}', '{"hasClick":true,"footKeys":{"Enter":"explode"}}'])(
    'are the usual ones, without a click, where %s is kept',
    (text) => {
      expect(parseDeskSettings(text)).toEqual(USUAL_DESK_SETTINGS);
      expect(parseDeskSettings(text).hasClick).toBe(false);
    },
  );
});

describe('the click', () => {
  it.each([44100, 48000])('at %i Hz is short, quiet and begins and ends in nothing', (sampleRateHz) => {
    const samples = clickSamples(sampleRateHz);
    const peak = Math.max(...samples.map(Math.abs));
    expect(samples.length / sampleRateHz).toBeLessThan(0.01);
    expect(peak).toBeGreaterThan(0.03);
    expect(peak).toBeLessThanOrEqual(0.05);
    expect(Math.abs(samples[0] ?? 1)).toBeLessThan(peak / 100);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(peak / 100);
  });
});

describe('the level', () => {
  it.each([
    [-Infinity, false, 'silent', 0],
    [-55, false, 'silent', 5 / 60],
    [-40, false, 'quiet', 20 / 60],
    [-15, false, 'good', 45 / 60],
    [0, true, 'clipping', 1],
  ])('of %s dBFS (clipped: %s) is called %s', (peakDbfs, isClipped, zone, share) => {
    expect(levelView(peakDbfs, isClipped).zone).toBe(zone);
    expect(levelView(peakDbfs, isClipped).share).toBeCloseTo(share, 9);
  });
});
