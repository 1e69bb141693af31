/** What the quiet before the first note says about the recording to come, as findings that a screen has words for. */
import type { Hum, QuietRoom } from '../analysis/signal/quietRoom.ts';

export type Blow = { readonly peakDbfs: number; readonly isClipped: boolean };

export type RoomFinding =
  /** Nothing comes in at all: a muted or wrong input. */
  | { readonly kind: 'no-signal' }
  | { readonly kind: 'quiet' | 'audible' | 'loud'; readonly noiseDbfs: number }
  /** Notes from here up are likely to come out too noisy. */
  | { readonly kind: 'treble-may-drown'; readonly trebleNoiseDbfs: number; readonly fromMidi: number }
  | ({ readonly kind: 'hum' } & Hum)
  | { readonly kind: 'blow-clipped' | 'blow-quiet' | 'blow-good'; readonly peakDbfs: number };

/** A live microphone's own noise lies above this; below it a converter gives zeros and ones. */
const NO_SIGNAL_DBFS = -110;
/** Words for an ear, chosen: at the usual gain a room at night, a room by day, and one in which something runs. */
const LOUD_DBFS = -50;
const AUDIBLE_DBFS = -65;
/** Weaker hum lies below what any partial is measured at. */
const HUM_MATTERS_DBFS = -75;
/** A blow that peaks lower leaves less than about 30 dB above a quiet room. Chosen; higher asks for closer microphones. */
const BLOW_QUIET_DBFS = -30;

/**
 * From which note on single takes were too noisy to be used, by the noise from 2 to 8 kHz. Measured by us on recorded notes of one
 * concert grand, every minor third, one even loudness, scaled so that the loudest peaked at −6 dBFS, with white noise added.
 */
const DROWNED: readonly { readonly fromDbfs: number; readonly fromMidi: number }[] = [
  { fromDbfs: -45, fromMidi: 93 },
  { fromDbfs: -55, fromMidi: 99 },
  { fromDbfs: -60, fromMidi: 102 },
  { fromDbfs: -70, fromMidi: 105 },
];

/**
 * @param room null until enough quiet was heard
 * @param blow the loudest since listening began, null before the first
 */
export function roomFindings(room: QuietRoom | null, blow: Blow | null): RoomFinding[] {
  const findings: RoomFinding[] = [];
  if (room) findings.push(...quietFindings(room));
  if (blow) findings.push(blowFinding(blow));
  return findings;
}

function quietFindings({ noiseDbfs, trebleNoiseDbfs, hum }: QuietRoom): RoomFinding[] {
  if (noiseDbfs < NO_SIGNAL_DBFS) return [{ kind: 'no-signal' }];
  const findings: RoomFinding[] = [{ kind: loudness(noiseDbfs), noiseDbfs }];
  const drowned = DROWNED.find(({ fromDbfs }) => trebleNoiseDbfs >= fromDbfs);
  if (drowned) findings.push({ kind: 'treble-may-drown', trebleNoiseDbfs, fromMidi: drowned.fromMidi });
  if (hum && hum.levelDbfs > HUM_MATTERS_DBFS) findings.push({ kind: 'hum', ...hum });
  return findings;
}

function loudness(noiseDbfs: number): 'quiet' | 'audible' | 'loud' {
  if (noiseDbfs > LOUD_DBFS) return 'loud';
  return noiseDbfs > AUDIBLE_DBFS ? 'audible' : 'quiet';
}

function blowFinding({ peakDbfs, isClipped }: Blow): RoomFinding {
  if (isClipped) return { kind: 'blow-clipped', peakDbfs };
  return { kind: peakDbfs < BLOW_QUIET_DBFS ? 'blow-quiet' : 'blow-good', peakDbfs };
}
