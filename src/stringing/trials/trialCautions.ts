/** What to keep in mind beside a trial's result. */
import type { NoteReading } from '../../piano/reading.ts';
import type { TrialKind } from '../../piano/stringingRecords.ts';
import { isLoneChange, type PartialTrial } from './partialTrial.ts';

export type TrialCaution =
  /** Before and after were struck at levels more than 10 dB apart. */
  | 'levels-differ'
  /** The string's own pitch moved by more than a cent: it is not the string that it was. */
  | 'pitch-moved'
  /** One take on a side: what strikes differ by is assumed, not measured. */
  | 'not-repeated'
  /** One partial alone changed, in one take a side: not counted as a change until another take shows it too. */
  | 'one-partial-alone'
  /** Some takes sound as if a neighbour were not muted. */
  | 'neighbour-may-sound'
  /** A pressed or tapped string may rise again, and a tap marks the cap: hear it again after some playing. */
  | 'may-come-back'
  /** Turning wire takes it off its bends: it needs time to settle. */
  | 'wire-disturbed';

/** Louder playing sounds otherwise: takes farther apart are not alike. Chosen: about one step from medium to loud playing. */
const LEVEL_REACH_DB = 10;
/** Chosen: strikes of one string differ by less. */
const PITCH_REACH_CENTS = 1;

/** @param before, after takes that can be compared, at least one a side */
export function trialCautions(
  kind: TrialKind,
  before: readonly NoteReading[],
  after: readonly NoteReading[],
  partials: readonly PartialTrial[],
): TrialCaution[] {
  const cautions: TrialCaution[] = [];
  if (Math.abs(meanOf(before, loudnessDbfs) - meanOf(after, loudnessDbfs)) > LEVEL_REACH_DB)
    cautions.push('levels-differ');
  if (Math.abs(meanOf(before, pitchCents) - meanOf(after, pitchCents)) > PITCH_REACH_CENTS)
    cautions.push('pitch-moved');
  if (before.length < 2 || after.length < 2) cautions.push('not-repeated');
  if (isLoneChange(partials)) cautions.push('one-partial-alone');
  if ([...before, ...after].some(({ quality }) => !quality.isUsable)) cautions.push('neighbour-may-sound');
  const isBetter = partials.some(({ change }) => change === 'stops' || change === 'weaker');
  if (isBetter && (kind === 'press the wire at the bridge' || kind === 'tap the wire to the bridge'))
    cautions.push('may-come-back');
  if (kind === 'take out its twist') cautions.push('wire-disturbed');
  return cautions;
}

function meanOf(takes: readonly NoteReading[], figure: (take: NoteReading) => number): number {
  return takes.reduce((sum, take) => sum + figure(take), 0) / takes.length;
}

function loudnessDbfs({ partials }: NoteReading): number {
  return 10 * Math.log10(partials.reduce((sum, { levelDbfs }) => sum + 10 ** (levelDbfs / 10), 1e-12));
}

function pitchCents({ offsetCents }: NoteReading): number {
  return offsetCents;
}
