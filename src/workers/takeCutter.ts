/** The take splitter with what a live survey adds: pauses, and the settings that held when each string was struck. */
import { createTakeSplitter, type Segment } from '../survey/takeSplitter.ts';
import type { EarlyToMeasure, ListeningSettings, SegmentToMeasure } from './listeningMessages.ts';

export type TakeCutter = {
  readonly push: (samples: Float32Array) => SegmentToMeasure[];
  readonly markHole: () => void;
  /** Ends the take in progress; sound that is pushed later begins a new one. */
  readonly cut: () => SegmentToMeasure[];
  /** Where the take in progress was struck, counted in what was pushed; null between takes. */
  readonly soundingSince: () => number | null;
  /** The take in progress up to that sample. */
  readonly soundingUpTo: (endSample: number) => EarlyToMeasure | null;
  readonly set: (settings: ListeningSettings) => void;
  readonly roomLevelDbfs: () => number | null;
};

export function createTakeCutter(sampleRateHz: number, firstSettings: ListeningSettings): TakeCutter {
  const changes = [{ fromSample: 0, settings: firstSettings, settingsNumber: 0 }];
  const settingsAt = (sample: number) => {
    const change = changes.findLast(({ fromSample }) => fromSample <= sample);
    return { settings: change?.settings ?? firstSettings, settingsNumber: change?.settingsNumber ?? 0 };
  };
  let splitter = createTakeSplitter(sampleRateHz);
  let splitterStart = 0;
  let pushedCount = 0;
  const toMeasure = (segment: Segment): SegmentToMeasure => {
    const start = splitterStart + segment.startSample;
    return {
      kind: 'segment',
      samples: segment.samples.slice(), // a buffer of its own, which can be handed on whole
      sampleRateHz,
      startS: start / sampleRateHz,
      onsetIndex: segment.onsetIndex,
      endedBy: segment.endedBy,
      hasHole: segment.hasHole,
      ...settingsAt(start + segment.onsetIndex),
    };
  };
  return {
    push: (samples) => {
      pushedCount += samples.length;
      return splitter.push(samples).map(toMeasure);
    },
    markHole: () => splitter.markHole(),
    cut: () => {
      const segments = splitter.finish().map(toMeasure);
      splitter = createTakeSplitter(sampleRateHz);
      splitterStart = pushedCount;
      return segments;
    },
    soundingSince: () => {
      const sounding = splitter.sounding();
      return sounding && splitterStart + sounding.startSample + sounding.onsetIndex;
    },
    soundingUpTo: (endSample) => {
      const sounding = splitter.sounding();
      if (!sounding) return null;
      const start = splitterStart + sounding.startSample;
      return {
        kind: 'early',
        samples: sounding.samples.slice(0, Math.max(0, endSample - start)),
        sampleRateHz,
        startS: start / sampleRateHz,
        onsetIndex: sounding.onsetIndex,
        ...settingsAt(start + sounding.onsetIndex),
      };
    },
    set: (settings) => {
      changes.push({ fromSample: pushedCount, settings, settingsNumber: changes.length });
    },
    roomLevelDbfs: () => splitter.roomLevelDbfs(),
  };
}
