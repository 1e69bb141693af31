import { describe, expect, it } from 'vitest';
import type { QuietRoom } from '../../src/analysis/signal/quietRoom.ts';
import { roomFindings } from '../../src/survey/roomAdvice.ts';

const QUIET: QuietRoom = { noiseDbfs: -72, trebleNoiseDbfs: -80, hum: null };
const hum = { mainsHz: 50, strongestHz: 100, levelDbfs: -48 } as const;

describe('roomFindings', () => {
  it('says nothing before anything was heard', () => expect(roomFindings(null, null)).toEqual([]));

  it.each([
    { noiseDbfs: -72, kind: 'quiet' },
    { noiseDbfs: -60, kind: 'audible' },
    { noiseDbfs: -40, kind: 'loud' },
  ])('calls noise at $noiseDbfs dBFS $kind', ({ noiseDbfs, kind }) => {
    expect(roomFindings({ ...QUIET, noiseDbfs }, null)).toEqual([{ kind, noiseDbfs }]);
  });

  it('says that nothing comes in, and then nothing else about the room', () => {
    expect(roomFindings({ noiseDbfs: -Infinity, trebleNoiseDbfs: -Infinity, hum: null }, null)).toEqual([
      { kind: 'no-signal' },
    ]);
  });

  it('names the lowest note that may drown, lower the louder the hiss', () => {
    const lowest = [-71, -70, -60, -55, -45, -20].map((trebleNoiseDbfs) => {
      const finding = roomFindings({ ...QUIET, trebleNoiseDbfs }, null).find(({ kind }) => kind === 'treble-may-drown');
      return finding?.kind === 'treble-may-drown' ? finding.fromMidi : null;
    });
    expect(lowest).toEqual([null, 105, 102, 99, 93, 93]);
  });

  it('tells hum with its frequency, and leaves out hum that lies below every partial', () => {
    expect(roomFindings({ ...QUIET, hum }, null)).toContainEqual({ kind: 'hum', ...hum });
    const faint = { ...hum, levelDbfs: -80 };
    expect(roomFindings({ ...QUIET, hum: faint }, null).map(({ kind }) => kind)).toEqual(['quiet']);
  });

  it.each([
    { peakDbfs: 0, isClipped: true, kind: 'blow-clipped' },
    { peakDbfs: -12, isClipped: false, kind: 'blow-good' },
    { peakDbfs: -41, isClipped: false, kind: 'blow-quiet' },
  ])('judges a blow of $peakDbfs dBFS (clipped: $isClipped): $kind', ({ kind, ...blow }) => {
    expect(roomFindings(null, blow)).toEqual([{ kind, peakDbfs: blow.peakDbfs }]);
  });
});
