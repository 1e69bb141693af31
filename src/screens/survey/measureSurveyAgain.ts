/** Every take of a survey whose sound was kept, measured again by several workers. */
import type { Take } from '../../piano/instrument.ts';
import { readingChangeCents } from '../../piano/readingChange.ts';
import type { Records } from '../../records/records.ts';
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

export const NOTHING_AGAIN: AgainSummary = {
  doneCount: 0,
  largest: null,
  notFoundMidi: [],
  faultyCount: 0,
  writeFault: null,
};

export type SurveyAgain = {
  readonly records: Pick<Records, 'sound' | 'addReading'>;
  readonly askers: readonly TakeAsker[];
  /** Told after each take. */
  readonly onProgress: (tried: number) => void;
  readonly isStopped: () => boolean;
};

/** Ends early where it is stopped, or where a reading could not be written; what was written stays. */
export async function measureSurveyAgain(takes: readonly Take[], again: SurveyAgain): Promise<AgainSummary> {
  const waiting = [...takes];
  let summary = NOTHING_AGAIN;
  let triedCount = 0;
  const goOn = () => !again.isStopped() && summary.writeFault === null;
  const workOn = async (asker: TakeAsker) => {
    for (let take = waiting.shift(); take && goOn(); take = waiting.shift()) {
      const part = await measureOne(take, asker, again);
      summary = added(summary, part);
      triedCount += 1;
      again.onProgress(triedCount);
    }
  };
  await Promise.all(again.askers.map(workOn));
  return summary;
}

async function measureOne(take: Take, asker: TakeAsker, { records, isStopped }: SurveyAgain): Promise<AgainSummary> {
  const sound = await records.sound(take.id);
  const outcome = sound ? await asker.ask(againWork(take, sound)).catch(() => null) : null;
  // A worker that was stopped in the middle of a take is no fault of the sound.
  if (outcome === null) return { ...NOTHING_AGAIN, faultyCount: isStopped() ? 0 : 1 };
  if (!outcome.found) return { ...NOTHING_AGAIN, notFoundMidi: [take.midi] };
  const written = await records.addReading(take.id, outcome.reading, measuredNow());
  if (!written.written) return { ...NOTHING_AGAIN, writeFault: written };
  const changeCents = readingChangeCents(take.reading, outcome.reading);
  return { ...NOTHING_AGAIN, doneCount: 1, largest: { midi: take.midi, changeCents } };
}

function added(one: AgainSummary, other: AgainSummary): AgainSummary {
  const size = ({ largest }: AgainSummary) => (largest === null ? -1 : Math.abs(largest.changeCents));
  return {
    doneCount: one.doneCount + other.doneCount,
    largest: size(other) > size(one) ? other.largest : one.largest,
    notFoundMidi: [...one.notFoundMidi, ...other.notFoundMidi],
    faultyCount: one.faultyCount + other.faultyCount,
    writeFault: one.writeFault ?? other.writeFault,
  };
}
