/** Every take of a survey whose sound was kept, measured again by several workers. */
import type { Take } from '../../piano/instrument.ts';
import { readingChangeCents } from '../../piano/readingChange.ts';
import type { Records } from '../../records/records.ts';
import type { FurtherReading } from '../../records/takeWrites.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { measuredNow } from '../../ui/programVersion.ts';
import { againWork } from '../../workers/againWork.ts';
import type { TakeAsker } from '../../workers/askTakeWorker.ts';

export type AgainSummary = {
  /** Takes with a new reading. */
  readonly doneCount: number;
  readonly largest: { readonly midi: number; readonly changeCents: number } | null;
  /** Notes in which nothing was found this time. */
  readonly notFoundMidi: readonly number[];
  /** Sounds that could not be read. */
  readonly faultyCount: number;
  readonly writeFault: WriteFailure | null;
};

export type SurveyAgain = {
  readonly records: Pick<Records, 'sound' | 'addReadings'>;
  readonly askers: readonly TakeAsker[];
  /** Told after each take. */
  readonly onProgress: (triedCount: number) => void;
  readonly isStopped: () => boolean;
};

type Again =
  | { readonly kind: 'read'; readonly take: Take; readonly further: FurtherReading }
  | { readonly kind: 'not-found'; readonly take: Take }
  | { readonly kind: 'faulty' };

/**
 * Writes everything at once when it is over or was stopped, so that whoever watches the survey is not told 88 times; what is lost
 * if the page dies before can be measured again.
 */
export async function measureSurveyAgain(takes: readonly Take[], again: SurveyAgain): Promise<AgainSummary> {
  const waiting = [...takes];
  const results: Again[] = [];
  const workOn = async (asker: TakeAsker) => {
    for (let take = waiting.shift(); take && !again.isStopped(); take = waiting.shift()) {
      const result = await measureOne(take, asker, again);
      // A worker that was stopped in the middle of a take is no fault of the sound.
      if (result.kind !== 'faulty' || !again.isStopped()) results.push(result);
      again.onProgress(results.length);
    }
  };
  await Promise.all(again.askers.map(workOn));
  const read = results.flatMap((result) => (result.kind === 'read' ? [result] : []));
  const written = await again.records.addReadings(read.map(({ further }) => further));
  return {
    doneCount: written.written ? read.length : 0,
    largest: written.written ? largestChange(read) : null,
    notFoundMidi: results.flatMap((result) => (result.kind === 'not-found' ? [result.take.midi] : [])),
    faultyCount: results.filter(({ kind }) => kind === 'faulty').length,
    writeFault: written.written ? null : written,
  };
}

async function measureOne(take: Take, asker: TakeAsker, { records }: SurveyAgain): Promise<Again> {
  const sound = await records.sound(take.id);
  const outcome = sound ? await asker.ask(againWork(take, sound)).catch(() => null) : null;
  if (outcome === null) return { kind: 'faulty' };
  if (!outcome.found) return { kind: 'not-found', take };
  return { kind: 'read', take, further: { takeId: take.id, reading: outcome.reading, measured: measuredNow() } };
}

function largestChange(read: readonly Extract<Again, { kind: 'read' }>[]): AgainSummary['largest'] {
  const changes = read.map(({ take, further }) => ({
    midi: take.midi,
    changeCents: readingChangeCents(take.reading, further.reading),
  }));
  const size = (change: { changeCents: number }) => Math.abs(change.changeCents);
  return changes.sort((one, other) => size(other) - size(one))[0] ?? null;
}
