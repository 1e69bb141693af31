/** The general-purpose pitch estimators of pitchfinder, each on the frames that suit it. They give the pitch of the fundamental. */
import { ACF2PLUS, AMDF, DynamicWavelet, Macleod, YIN } from 'pitchfinder';
import { type NoteSpec, synthesizeNote } from '../support/syntheticString.ts';

export type PeerPitches = Readonly<Record<string, number | null>>;

type Peer = {
  readonly frameLength: number;
  /** The frame's peak is brought to this: some have a level gate, and YIN mistakes a quiet frame. */
  readonly peak: number;
  estimator(sampleRateHz: number): (frame: Float32Array) => number | null;
};

export const PITCHFINDER_PEERS: Readonly<Record<string, Peer>> = {
  'pitchfinder ACF2PLUS': { frameLength: 4096, peak: 0.8, estimator: (sampleRate) => ACF2PLUS({ sampleRate }) },
  // It uses the power of two strictly below the length.
  'pitchfinder YIN': {
    frameLength: 8193,
    peak: 1000,
    estimator: (sampleRate) => YIN({ sampleRate, threshold: 0.2, probabilityThreshold: 0.1 }),
  },
  // It rounds its threshold to a whole number.
  'pitchfinder AMDF': {
    frameLength: 4096,
    peak: 1000,
    estimator: (sampleRate) => AMDF({ sampleRate, minFrequency: 25, maxFrequency: 4500, sensitivity: 0.1, ratio: 5 }),
  },
  'pitchfinder Macleod': {
    frameLength: 8192,
    peak: 0.8,
    estimator: (sampleRate) => {
      const estimate = Macleod({ sampleRate, bufferSize: 8192, cutoff: 0.93 });
      return (frame) => estimate(frame).freq;
    },
  },
  'pitchfinder DynamicWavelet': {
    frameLength: 4096,
    peak: 0.8,
    estimator: (sampleRate) => DynamicWavelet({ sampleRate }),
  },
};

export type PitchfinderInput = { readonly spec: NoteSpec };

export function pitchfinderJob({ spec }: PitchfinderInput): PeerPitches {
  const { samples, truth } = synthesizeNote(spec);
  return pitchfinderPitches(samples, truth.onsetIndex, spec.sampleRateHz, spec.strings[0]!.midi);
}

/** Median of three frames in the sustained part, which is early where the tone is short. Null where no frame gave an answer. */
export function pitchfinderPitches(
  samples: Float32Array,
  onsetIndex: number,
  sampleRateHz: number,
  midi: number,
): PeerPitches {
  const startsS = midi >= SHORT_TONE_MIDI ? [0.03, 0.08, 0.13] : [0.1, 0.3, 0.5];
  const starts = startsS.map((startS) => onsetIndex + Math.round(startS * sampleRateHz));
  const entries = Object.entries(PITCHFINDER_PEERS).map(([name, peer]) => {
    const estimate = peer.estimator(sampleRateHz);
    const answers = starts.flatMap((start) => answerOf(estimate, samples.slice(start, start + peer.frameLength), peer));
    return [name, middle(answers)] as const;
  });
  return Object.fromEntries(entries);
}

export const SHORT_TONE_MIDI = 84;

function answerOf(estimate: (frame: Float32Array) => number | null, frame: Float32Array, peer: Peer): number[] {
  if (frame.length < peer.frameLength) return [];
  const largest = frame.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const hz = estimate(frame.map((value) => (value * peer.peak) / largest));
  return hz !== null && Number.isFinite(hz) && hz > 0 ? [hz] : [];
}

/** The middle one of up to three answers (of two, the lower). */
export function middle(answers: readonly number[]): number | null {
  return [...answers].sort((a, b) => a - b)[(answers.length - 1) >> 1] ?? null;
}
