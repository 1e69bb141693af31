import { describe, expect, it } from 'vitest';
import {
  parseBlockMessage,
  parseListeningReport,
  parseListeningRequest,
  parseMeasuringRequest,
} from '../../src/workers/parseMessage.ts';

describe('messages at the workers’ gates', () => {
  it('lets a block pass without copying its samples', () => {
    const samples = new Float32Array(2048);
    const message = parseBlockMessage({ kind: 'block', firstFrame: 128, samples });
    expect(message.kind === 'block' && message.samples).toBe(samples);
  });

  it.each([
    [{ kind: 'block', firstFrame: 128, samples: [0, 1] }, /samples/],
    [{ kind: 'block', firstFrame: -1, samples: new Float32Array(1) }, /firstFrame/],
    [{ kind: 'blocks' }, /kind/],
    ['block', /does not fit/],
  ])('refuses a block message that does not fit, and says where', (message, place) => {
    expect(() => parseBlockMessage(message)).toThrow(place);
  });

  it('refuses a string position that no note has', () => {
    const settings = { pitchStandardHz: 440, stringPosition: 4 };
    expect(() => parseListeningRequest({ kind: 'settings', settings })).toThrow(/settings\.stringPosition/);
  });

  it('lets levels of digital silence pass', () => {
    const level = { kind: 'level', peakDbfs: -Infinity, rmsDbfs: -Infinity, isClipped: false };
    expect(parseListeningReport(level)).toEqual(level);
  });

  it('lets a take that still sounds pass both ways, and refuses what lacks a part', () => {
    const settings = { pitchStandardHz: 440, stringPosition: 0 };
    const sound = { samples: new Float32Array(4), sampleRateHz: 48000, startS: 1, onsetIndex: 2 };
    const request = { kind: 'early', ...sound, settings, settingsNumber: 0 };
    expect(parseMeasuringRequest(request)).toEqual(request);
    expect(() => parseMeasuringRequest({ ...request, onsetIndex: -1 })).toThrow(/onsetIndex/);
    const told = {
      kind: 'early',
      onsetS: 1,
      toneS: 0.8,
      midi: 60,
      offsetCents: -2,
      offsetStandardUncertaintyCents: 0.1,
    };
    expect(parseListeningReport(told)).toEqual(told);
    expect(() => parseListeningReport({ ...told, offsetCents: Number.NaN })).toThrow(/offsetCents/);
  });

  it.each([{ found: true }, { found: 'yes' }, {}])('refuses a take without an outcome', (outcome) => {
    const take = {
      kind: 'take',
      outcome,
      settings: { pitchStandardHz: 440, stringPosition: 0 },
      startS: 0,
      onsetS: 0.3,
      durationS: 2,
      endedBy: 'decay',
      hasHole: false,
      samples: new Float32Array(4),
      sampleRateHz: 48000,
    };
    expect(() => parseListeningReport(take)).toThrow(/outcome/);
    expect(parseListeningReport({ ...take, outcome: { found: false, reason: 'silence', detail: '' } }).kind).toBe(
      'take',
    );
  });
});
