import { useState } from 'react';
import { formatNote } from '../../piano/format.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { Instrument, Survey, Take, Visit } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { texts } from '../../ui/texts.ts';
import { offerUndo } from '../../ui/undoOffer.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';

export type TakePage = {
  readonly take: Take;
  readonly survey: Survey;
  readonly visit: Visit;
  readonly instrument: Instrument;
  /** Other takes of the same note and string in this survey. */
  readonly others: readonly Take[];
};

export type TakeView = {
  readonly page: Observed<TakePage | null>;
  readonly writeFault: WriteFailure | null;
  readonly setKept: (isKept: boolean) => Promise<void>;
};

export function useTake(records: Records, takeId: TakeId): TakeView {
  const page = useObserved<TakePage | null>(takeId, (onValue, onFault) =>
    records.observe(() => readTakePage(records, takeId), onValue, onFault),
  );
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const setKept = async (isKept: boolean) => {
    if (page.state !== 'ready' || !page.value) return;
    const { take, others } = page.value;
    const keptBefore = take.isKept ? take : others.find((other) => other.isKept);
    const outcome = await records.setKept(takeId, isKept);
    setWriteFault(outcome.written ? null : outcome);
    if (!outcome.written) return;
    const note = formatNote(take.midi);
    const undo = async () => {
      const undone = await (keptBefore ? records.setKept(keptBefore.id, true) : records.setKept(takeId, !isKept));
      if (!undone.written) setWriteFault(undone);
    };
    offerUndo({ message: isKept ? texts.take.keptMessage(note) : texts.take.asideMessage(note), undo });
  };
  return { page, writeFault, setKept };
}

async function readTakePage(records: Records, takeId: TakeId): Promise<TakePage | null> {
  const take = await records.take(takeId);
  const survey = take && (await records.survey(take.surveyId));
  const visit = survey && (await records.visit(survey.visitId));
  const instrument = survey && (await records.instrument(survey.instrumentId));
  if (!take || !survey || !visit || !instrument) return null;
  const others = (await records.takesOfSurvey(survey.id)).filter(
    (other) => other.id !== take.id && other.midi === take.midi && other.stringPosition === take.stringPosition,
  );
  return { take, survey, visit, instrument, others };
}
