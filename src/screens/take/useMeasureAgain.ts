import { useState } from 'react';
import { formatChangeCents, formatNote } from '../../piano/format.ts';
import type { Take, TakeSound } from '../../piano/instrument.ts';
import { readingChangeCents } from '../../piano/readingChange.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { measuredNow } from '../../ui/programVersion.ts';
import { texts } from '../../ui/texts.ts';
import { againWork } from '../../workers/againWork.ts';
import { sharedTakeWorker } from '../../workers/sharedTakeWorker.ts';

export type MeasureAgain = {
  readonly isRunning: boolean;
  /** What became of it. */
  readonly message: string;
  readonly writeFault: WriteFailure | null;
  readonly run: (take: Take, sound: TakeSound) => Promise<void>;
};

const words = texts.sound.again;
/** Smaller changes are not shown by the three decimals. */
const SHOWN_FROM_CENTS = 0.0005;

export function useMeasureAgain(records: Records): MeasureAgain {
  const [isRunning, setRunning] = useState(false);
  const [message, setMessage] = useState('');
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const measure = async (take: Take, sound: TakeSound): Promise<string> => {
    const outcome = await sharedTakeWorker().ask(againWork(take, sound));
    if (!outcome.found) return words.nothing(outcome.detail);
    const further = { takeId: take.id, reading: outcome.reading, measured: measuredNow() };
    const written = await records.addReadings([further]);
    setWriteFault(written.written ? null : written);
    if (!written.written) return '';
    const changeCents = readingChangeCents(take.reading, outcome.reading);
    const note = formatNote(take.midi);
    if (Math.abs(changeCents) < SHOWN_FROM_CENTS) return words.same(note);
    return words.changed(note, formatChangeCents(changeCents));
  };
  const run = async (take: Take, sound: TakeSound) => {
    setRunning(true);
    try {
      setMessage(await measure(take, sound));
    } catch (error) {
      setMessage(words.failed(error instanceof Error ? error.message : String(error)));
    } finally {
      setRunning(false);
    }
  };
  return { isRunning, message, writeFault, run };
}
