import { describe, expect, it } from 'vitest';
import { levelView } from '../../../src/screens/recording/levelView.ts';
import { actionOfKey, KEYS } from '../../../src/screens/recording/recordingKeys.ts';

const bare = { ctrlKey: false, metaKey: false, altKey: false, repeat: false };

describe('keys', () => {
  it('each lead to their own action, small or capital', () => {
    for (const [action, { key }] of Object.entries(KEYS)) {
      expect(actionOfKey({ ...bare, key })).toBe(action);
      if (key.length === 1) expect(actionOfKey({ ...bare, key: key.toUpperCase() })).toBe(action);
    }
  });

  it('with a modifier or held down do nothing, nor do others', () => {
    expect(actionOfKey({ ...bare, key: 'f', ctrlKey: true })).toBeUndefined();
    expect(actionOfKey({ ...bare, key: 'u', repeat: true })).toBeUndefined();
    expect(actionOfKey({ ...bare, key: 'x' })).toBeUndefined();
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
