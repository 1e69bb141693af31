/** Splits one long recording, as it comes in, into takes: one for each struck note. */
import { createRateReducer } from './rateReducer.ts';
import { createRoomNoise } from './roomNoise.ts';
import { createSampleHistory } from './sampleHistory.ts';
import type { SoundEvent } from './soundEvents.ts';
import { createStrikeFinder, DECISION_LAG_S } from './strikeFinder.ts';

export type Segment = {
  /** From up to 0.3 s before the strike (the end of the take before may be in it) to the take's end. */
  readonly samples: Float32Array;
  /** Index of samples[0] in the whole stream. */
  readonly startSample: number;
  /** Index of the strike in `samples`. */
  readonly onsetIndex: number;
  readonly endedBy: 'decay' | 'next-strike' | 'longest' | 'end-of-recording';
  /** Frames are missing somewhere between the strike and the end. */
  readonly hasHole: boolean;
};

/** A take that has not ended yet, as far as it is known. */
export type SoundingTake = {
  /** From up to 0.3 s before the strike to the sample that came last. A view, good until the next push. */
  readonly samples: Float32Array;
  readonly startSample: number;
  readonly onsetIndex: number;
};

export type TakeSplitter = {
  /** Any number of samples, full scale ±1. Gives the takes that ended; a take comes up to a second after its end. */
  push(block: Float32Array): Segment[];
  /** Frames are missing between what was pushed last and what comes next. */
  markHole(): void;
  /** The recording is over: the take that still sounds. */
  finish(): Segment[];
  /**
   * The take in progress; null between takes. It begins where its segment will, but its end is not known yet: the newest half
   * second or more may be silence, or the next note.
   */
  sounding(): SoundingTake | null;
  /** Level of the room between the takes re a full-scale sine; null while no gap has been heard. */
  roomLevelDbfs(): number | null;
};

/** `bins`: where its partials stood while it sounded without a break, neighbours included. */
type OpenTake = { readonly onset: number; lastToneAt: number; readonly bins: Set<number> };

/**
 * A strike is a place where partials begin that did not sound before and that outlast a knock. Beats, false beats, knocks and the
 * noise of keys and dampers inside a note do not end it; speech between notes comes out as a take too. Takes do not depend on how
 * the stream was cut into blocks. Holds some 25 s of sound, never more.
 *
 * May be missed: a note struck again some 15 dB softer while it still rings (the strings without dampers), and in the lowest
 * octave a soft note right after a loud neighbour. A loud damper less than some 40 ms before a strike brings the strike forward to it.
 * @throws {RangeError} if the sample rate is not from 8 to 400 kHz
 */
export function createTakeSplitter(sampleRateHz: number): TakeSplitter {
  if (!(sampleRateHz >= 8000 && sampleRateHz <= 400_000))
    throw new RangeError(`sampleRateHz must be from 8000 to 400000, got ${sampleRateHz}`);
  const reducer = createRateReducer(sampleRateHz);
  const finder = createStrikeFinder(reducer.reducedRateHz);
  const room = createRoomNoise();
  const samplesOf = (seconds: number) => Math.round(seconds * sampleRateHz);
  const history = createSampleHistory(samplesOf(LONGEST_TAKE_S + PRE_ROLL_S + DECISION_LAG_S + 2 * PIECE_S));
  let take: OpenTake | undefined;
  let idleFrom = 0;
  let holes: number[] = [];

  const startOf = (onset: number) => Math.max(0, onset - samplesOf(PRE_ROLL_S));
  const close = (end: number, endedBy: Segment['endedBy']): Segment[] => {
    if (!take) return [];
    const { onset } = take;
    take = undefined;
    idleFrom = end;
    const startSample = startOf(onset);
    const hasHole = holes.some((at) => at > onset && at < end);
    holes = holes.filter((at) => at >= end);
    return [
      {
        samples: history.view(startSample, end).slice(),
        startSample,
        onsetIndex: onset - startSample,
        endedBy,
        hasHole,
      },
    ];
  };

  const onEvent = (event: SoundEvent): Segment[] => {
    if (event.kind === 'strike') {
      const onset = event.index * reducer.factor;
      const closed = close(onset, 'next-strike');
      take = { onset, lastToneAt: onset + samplesOf(SHORTEST_TAKE_S), bins: new Set() };
      return closed;
    }
    const at = event.endIndex * reducer.factor;
    if (!take) {
      if (at > idleFrom + samplesOf(FRAME_CLEAR_S)) room.learn(event.tones, event.meanSquare);
      return [];
    }
    const bins = room.tonesIn(event.tones);
    const isUnbroken = at <= take.lastToneAt + samplesOf(FRAME_STEP_S);
    if (isUnbroken) for (const bin of bins) for (const near of [bin - 1, bin, bin + 1]) take.bins.add(near);
    if (bins.length > 0 && (isUnbroken || isOwn(bins, take))) take.lastToneAt = Math.max(take.lastToneAt, at);
    if (at >= take.onset + samplesOf(LONGEST_TAKE_S)) return close(take.onset + samplesOf(LONGEST_TAKE_S), 'longest');
    return at > take.lastToneAt + samplesOf(QUIET_S) ? close(take.lastToneAt, 'decay') : [];
  };

  return {
    push(block) {
      const segments: Segment[] = [];
      const pieceLength = samplesOf(PIECE_S);
      for (let start = 0; start < block.length; start += pieceLength) {
        const piece = block.subarray(start, start + pieceLength);
        history.append(piece);
        for (const event of finder.push(reducer.push(piece))) segments.push(...onEvent(event));
      }
      return segments;
    },
    markHole() {
      holes.push(history.endIndex);
    },
    finish() {
      const segments = finder.finish().flatMap(onEvent);
      return [...segments, ...close(history.endIndex, 'end-of-recording')];
    },
    sounding() {
      if (!take) return null;
      const startSample = startOf(take.onset);
      const samples = history.view(startSample, history.endIndex);
      return { samples, startSample, onsetIndex: take.onset - startSample };
    },
    roomLevelDbfs: () => room.levelDbfs(),
  };
}

/** After a gap a tone goes on where it stood before: a beat's trough is over. A cough stands elsewhere. */
function isOwn(bins: readonly number[], take: OpenTake): boolean {
  return bins.filter((bin) => take.bins.has(bin)).length >= OWN_SHARE * bins.length;
}

/**
 * Chosen: all of a beating tone's own partials stand where they stood; a cough's peaks fall there by chance, three of five in the
 * lowest octave and fewer above. A larger share cuts a tone in noise short, a smaller one keeps coughs in it.
 */
const OWN_SHARE = 0.9;
/** A little more than from one long frame to the next. */
const FRAME_STEP_S = 0.03;

const LONGEST_TAKE_S = 20;
const PRE_ROLL_S = 0.3;
const SHORTEST_TAKE_S = 0.15;
/** A tone is over when no partial was seen for this long: a beat's trough is shorter, or the noise has it. */
const QUIET_S = 0.3;
/** The room is learned from frames in which a take's end is no more. */
const FRAME_CLEAR_S = 0.4;
const PIECE_S = 0.5;
