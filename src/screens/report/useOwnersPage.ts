import { useMemo, useState } from 'react';
import { dataUri } from '../../files/dataUri.ts';
import { readReportRecords } from '../../judging/readReportRecords.ts';
import { useJudgedRecords } from '../../judging/useJudgedRecords.ts';
import type { Judgement } from '../../judging/useJudgement.ts';
import { figureLanguage } from '../../piano/formatLanguage.ts';
import type { InstrumentId, PhotographId } from '../../piano/ids.ts';
import type { Photograph } from '../../piano/photograph.ts';
import type { Records } from '../../records/records.ts';
import type { JudgedRecords } from '../../report/judgedRecords.ts';
import { type OptionalSection, type OwnersPage, ownersPage } from '../../report/ownersPage.ts';
import type { ReportPhotograph, ReportRecords } from '../../report/reportRecords.ts';
import { reportWordsIn } from '../../report/wordsIn.ts';
import { type Observed, useObserved } from '../../ui/useObserved.ts';
import {
  isPhotographChosen,
  rememberedLeftOut,
  rememberedRemark,
  rememberPhotograph,
  rememberRemark,
  rememberSection,
} from './ownersChoice.ts';

type Kept = { readonly records: ReportRecords; readonly photographs: readonly Photograph[] };

export type OwnersView = {
  /** Null: there is no such instrument. */
  readonly kept: Observed<Kept | null>;
  readonly judgement: Judgement;
  readonly readingCount: number;
  /** Null until the records are judged. */
  readonly page: OwnersPage | null;
  readonly leftOut: readonly OptionalSection[];
  readonly setSection: (section: OptionalSection, isIn: boolean) => void;
  readonly chosenPhotographs: readonly PhotographId[];
  readonly setPhotograph: (id: PhotographId, isIn: boolean) => void;
  readonly remark: string;
  readonly setRemark: (remark: string) => void;
};

export function useOwnersPage(records: Records, instrumentId: InstrumentId): OwnersView {
  const kept = useObserved<Kept | null>(`owner ${instrumentId}`, (onValue, onFault) =>
    records.observe(() => readKept(records, instrumentId), onValue, onFault),
  );
  const { judgement, readingCount, judged } = useJudgedRecords(
    instrumentId,
    kept.state === 'ready' && kept.value ? kept.value.records : null,
  );
  const [leftOut, setLeftOut] = useState(rememberedLeftOut);
  const [remark, setRemark] = useState(() => rememberedRemark(instrumentId));
  const [chosenNow, setChosenNow] = useState<Readonly<Record<string, boolean>>>({});
  const all = kept.state === 'ready' ? (kept.value?.photographs ?? []) : [];
  const chosen = all.map(({ id }) => id).filter((id) => chosenNow[id] ?? isPhotographChosen(id));
  const pictures = usePictures(records, all, chosen);
  const page = useMemo(() => pageOf(judged, leftOut, pictures, remark), [judged, leftOut, pictures, remark]);
  return {
    kept,
    judgement,
    readingCount,
    page,
    leftOut,
    setSection: (section, isIn) => {
      rememberSection(section, isIn);
      setLeftOut(isIn ? leftOut.filter((one) => one !== section) : [...leftOut, section]);
    },
    chosenPhotographs: chosen,
    setPhotograph: (id, isIn) => {
      rememberPhotograph(id, isIn);
      setChosenNow({ ...chosenNow, [id]: isIn });
    },
    remark,
    setRemark: (text) => {
      rememberRemark(instrumentId, text);
      setRemark(text);
    },
  };
}

function pageOf(
  judged: JudgedRecords | null,
  leftOut: readonly OptionalSection[],
  photographs: readonly ReportPhotograph[],
  remark: string,
): OwnersPage | null {
  return judged && ownersPage(judged, reportWords, { leftOut, photographs, remark });
}

const reportWords = reportWordsIn(figureLanguage());
const NO_PICTURES: readonly ReportPhotograph[] = [];

/** The bytes of the chosen photographs only. */
function usePictures(records: Records, all: readonly Photograph[], chosen: readonly PhotographId[]) {
  const observed = useObserved<ReportPhotograph[]>(`pictures ${chosen.join(' ')}`, (onValue, onFault) =>
    records.observe(() => readPictures(records, all, chosen), onValue, onFault),
  );
  return observed.state === 'ready' ? observed.value : NO_PICTURES;
}

async function readPictures(
  records: Records,
  all: readonly Photograph[],
  chosen: readonly PhotographId[],
): Promise<ReportPhotograph[]> {
  const wanted = all.filter(({ id }) => chosen.includes(id));
  const files = await Promise.all(wanted.map(({ id }) => records.photographFile(id)));
  return wanted.flatMap((photograph, index) => {
    const file = files[index];
    return file ? [{ ...photograph, dataUri: dataUri(photograph.mediaType, file.bytes) }] : [];
  });
}

async function readKept(records: Records, instrumentId: InstrumentId): Promise<Kept | null> {
  const found = await readReportRecords(records, instrumentId);
  return found && { records: found, photographs: await records.photographsOf(instrumentId) };
}
