import { useState } from 'react';
import type { InstrumentId, PhotographId, VisitId } from '../../piano/ids.ts';
import type { Instrument, Visit } from '../../piano/instrument.ts';
import type { Photograph } from '../../piano/photograph.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import { preparePhotograph } from './preparePhotograph.ts';

/** Of a whole instrument, of one visit to it, or of one of its notes. */
export type PhotographSubject = {
  readonly instrumentId: InstrumentId;
  readonly visitId?: VisitId | undefined;
  readonly midi?: number | undefined;
};

export type PhotographPage = {
  readonly instrument: Instrument;
  /** The latest first. */
  readonly visits: readonly Visit[];
  readonly visit: Visit | null;
  /** The latest first. */
  readonly photographs: readonly Photograph[];
};

export type Adding =
  | { readonly phase: 'none' }
  | { readonly phase: 'adding'; readonly doneCount: number; readonly allCount: number }
  | {
      readonly phase: 'done';
      readonly addedCount: number;
      readonly notPictures: readonly string[];
      readonly fault: WriteFailure | null;
    };

export type Photographs = {
  readonly page: Observed<PhotographPage | null>;
  readonly adding: Adding;
  readonly add: (files: readonly File[], keepsFiles: boolean) => Promise<void>;
};

export function usePhotographs(records: Records, subject: PhotographSubject): Photographs {
  const key = `photographs ${subject.instrumentId} ${subject.visitId} ${subject.midi}`;
  const page = useObserved<PhotographPage | null>(key, (onValue, onFault) =>
    records.observe(() => readPage(records, subject), onValue, onFault),
  );
  const [adding, setAdding] = useState<Adding>({ phase: 'none' });
  const add = async (files: readonly File[], keepsFiles: boolean) => {
    const notPictures: string[] = [];
    let addedCount = 0;
    let fault: WriteFailure | null = null;
    for (const [doneCount, file] of files.entries()) {
      setAdding({ phase: 'adding', doneCount, allCount: files.length });
      const outcome = await addOne(records, subject, file, keepsFiles);
      if (outcome === 'not-a-picture') notPictures.push(file.name);
      else if (outcome === 'added') addedCount += 1;
      else fault = outcome;
      if (fault) break;
    }
    setAdding({ phase: 'done', addedCount, notPictures, fault });
  };
  return { page, adding, add };
}

async function readPage(records: Records, subject: PhotographSubject): Promise<PhotographPage | null> {
  const instrument = await records.instrument(subject.instrumentId);
  if (!instrument) return null;
  const visits = (await records.visitsOf(instrument.id)).reverse();
  const visit = visits.find(({ id }) => id === subject.visitId) ?? null;
  if (subject.visitId !== undefined && !visit) return null;
  const all = await records.photographsOf(instrument.id);
  return { instrument, visits, visit, photographs: all.filter((found) => isOf(found, subject)).reverse() };
}

function isOf({ visitId, midi }: Photograph, subject: PhotographSubject): boolean {
  if (subject.visitId !== undefined && visitId !== subject.visitId) return false;
  return subject.midi === undefined || midi === subject.midi;
}

async function addOne(
  records: Records,
  subject: PhotographSubject,
  file: File,
  keepsFile: boolean,
): Promise<'added' | 'not-a-picture' | WriteFailure> {
  try {
    const prepared = await preparePhotograph(file, keepsFile);
    if (!prepared.isPicture) return 'not-a-picture';
    const { bytes, ...figures } = prepared.photograph;
    const { instrumentId } = subject;
    const id = newId<PhotographId>();
    const photograph: Photograph = {
      id,
      instrumentId,
      visitId: subject.visitId ?? null,
      midi: subject.midi ?? null,
      stringPosition: null,
      addedAt: new Date().toISOString(),
      caption: '',
      ...figures,
    };
    const outcome = await records.addPhotograph(photograph, { id, instrumentId, bytes });
    return outcome.written ? 'added' : outcome;
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { written: false, reason: 'failed', message };
  }
}
