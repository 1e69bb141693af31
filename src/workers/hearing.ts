/** The listening worker's work, apart from the messages: blocks in; reports and cut takes out. */
import type { SoundBlock } from '../piano/soundBlock.ts';
import { createClockWatch } from './clockWatch.ts';
import { createEarlyMoments } from './earlyMoments.ts';
import { createFrameCount } from './frameCount.ts';
import { createHoleFinder } from './holeFinder.ts';
import { createLevelMeter } from './levelMeter.ts';
import type {
  EarlyToMeasure,
  HoleCause,
  ListeningReport,
  ListeningSettings,
  SegmentToMeasure,
} from './listeningMessages.ts';
import { createRoomWatch } from './roomWatch.ts';
import { createStrikeNotice } from './strikeNotice.ts';
import { createTakeCutter } from './takeCutter.ts';

export type HearingOutlets = {
  readonly report: (report: ListeningReport) => void;
  readonly measure: (segment: SegmentToMeasure) => void;
  /** A take that still sounds; the newest request alone counts. */
  readonly measureEarly: (sounding: EarlyToMeasure) => void;
  /** The system's clock: milliseconds, steady. */
  readonly nowMs: () => number;
};

export type Hearing = {
  readonly hear: (block: SoundBlock) => void;
  /** Sound was lost here that the frame count may not show. */
  readonly interrupt: () => void;
  readonly pause: () => void;
  readonly resume: () => void;
  readonly set: (settings: ListeningSettings) => void;
  readonly finish: () => void;
};

/** The room is told anew when its level moved by as much. */
const ROOM_STEP_DB = 1;

/** A device starts by fits; that is no news while nobody has played yet. */
const SETTLING_S = 0.5;

export function createHearing(sampleRateHz: number, settings: ListeningSettings, outlets: HearingOutlets): Hearing {
  const { report } = outlets;
  const cutter = createTakeCutter(sampleRateHz, settings);
  const meter = createLevelMeter(sampleRateHz);
  const strikes = createStrikeNotice(sampleRateHz);
  const early = createEarlyMoments(sampleRateHz);
  const room = createRoomWatch(sampleRateHz);
  let holes = createHoleFinder(sampleRateHz);
  const frames = createFrameCount();
  const clock = createClockReport(sampleRateHz, outlets);
  let heardCount = 0;
  let isPaused = false;
  let toldRoomDbfs: number | null = null;

  const measureAll = (segments: readonly SegmentToMeasure[]) => {
    if (segments.length > 0) room.end();
    segments.forEach(outlets.measure);
  };
  const markHole = (cause: HoleCause, atSample: number, sampleCount: number | null) => {
    cutter.markHole();
    const durationS = sampleCount === null ? null : sampleCount / sampleRateHz;
    const atS = atSample / sampleRateHz;
    if (cause === 'interrupted' || atS >= SETTLING_S) report({ kind: 'hole', cause, atS, durationS });
  };
  const checkFrames = (block: SoundBlock) => {
    const missing = frames.missingBefore(block);
    if (missing === 0) return;
    clock.restart();
    markHole('frames-missing', heardCount, missing);
  };
  /** The hole is marked between the sound before its end and the sound after it, so that it falls into the right take. */
  const cutAtHoles = (samples: Float32Array) => {
    let from = 0;
    for (const run of holes.push(samples, cutter.roomLevelDbfs())) {
      measureAll(cutter.push(samples.subarray(from, run.endIndex)));
      markHole('zeros-inside-sound', heardCount + run.endIndex - run.sampleCount, run.sampleCount);
      from = run.endIndex;
    }
    measureAll(cutter.push(samples.subarray(from)));
  };
  const show = (samples: Float32Array, roomDbfs: number | null) => {
    for (const level of meter.push(samples)) report({ kind: 'level', ...level });
    const struck = strikes.push(samples, roomDbfs);
    for (const index of struck) {
      report({ kind: 'strike', atS: (heardCount + index) / sampleRateHz });
      early.suspectStrike(heardCount + index);
    }
    const quiet = room.push(samples, struck.length > 0);
    if (quiet) report({ kind: 'room', ...quiet });
    if (roomDbfs === null || Math.abs(roomDbfs - (toldRoomDbfs ?? Infinity)) < ROOM_STEP_DB) return;
    toldRoomDbfs = roomDbfs;
    report({ kind: 'room-level', levelDbfs: roomDbfs });
  };
  const askEarly = () => {
    const since = cutter.soundingSince();
    const end = since === null ? null : early.endToMeasure(since, heardCount);
    const sounding = end === null ? null : cutter.soundingUpTo(end);
    if (sounding) outlets.measureEarly(sounding);
  };
  return {
    hear: (block) => {
      clock.see(block);
      if (isPaused) return;
      checkFrames(block);
      show(block.samples, cutter.roomLevelDbfs());
      cutAtHoles(block.samples);
      heardCount += block.samples.length;
      askEarly();
    },
    interrupt: () => {
      clock.restart();
      markHole('interrupted', heardCount, null);
    },
    pause: () => {
      isPaused = true;
      measureAll(cutter.cut());
    },
    resume: () => {
      isPaused = false;
      frames.forget();
      holes = createHoleFinder(sampleRateHz); // the silence of the pause is no hole in the sound before it
    },
    set: (next) => cutter.set(next),
    finish: () => measureAll(cutter.cut()),
  };
}

function createClockReport(sampleRateHz: number, { report, nowMs }: HearingOutlets) {
  let watch = createClockWatch(sampleRateHz);
  let startFrame: number | undefined;
  let runNumber = 0;
  return {
    see: (block: SoundBlock) => {
      startFrame ??= block.firstFrame;
      const point = watch.push(block.firstFrame + block.samples.length - startFrame, nowMs());
      if (point !== undefined) report({ kind: 'clock', ...point, runNumber });
    },
    restart: () => {
      watch = createClockWatch(sampleRateHz);
      startFrame = undefined;
      runNumber += 1;
    },
  };
}
