import { expect, it } from 'vitest';
import { microphoneConstraints, reportSettings } from '../../src/capture/microphoneSettings.ts';

const GRANTED = { echoCancellation: false, noiseSuppression: false, autoGainControl: false, channelCount: 1 };

it('asks for one channel with all speech processing off', () => {
  expect(microphoneConstraints()).toEqual(GRANTED);
});

it('asks for exactly the microphone that was chosen', () => {
  expect(microphoneConstraints('abc')).toEqual({ ...GRANTED, deviceId: { exact: 'abc' } });
});

it('finds nothing to report where every wish was granted', () => {
  expect(reportSettings(GRANTED)).toEqual({ notHonoured: [], notReported: [] });
});

it('names what was left on, and what the browser says nothing about', () => {
  const { autoGainControl, ...rest } = GRANTED;
  expect(autoGainControl).toBe(false);
  expect(reportSettings({ ...rest, noiseSuppression: true, channelCount: 2 })).toEqual({
    notHonoured: ['noiseSuppression', 'channelCount'],
    notReported: ['autoGainControl'],
  });
});
