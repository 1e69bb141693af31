import { useMemo, useState } from 'react';
import { JudgingState } from '../../judging/JudgingState.tsx';
import { useJudgement } from '../../judging/useJudgement.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { historyToJudge } from '../../workers/readHistoryToJudge.ts';
import { JudgedSections } from './JudgedSections.tsx';
import { type StabilityPage, useStability } from './useStability.ts';

const words = texts.stability;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

/** Weather told from wood: the verdict on an instrument's pin block, and everything it rests on. */
export function StabilityScreen({ records, instrumentId }: Props) {
  const page = useStability(records, instrumentId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  return (
    <>
      <StabilityHeading page={page.value} />
      {page.value.history.readings.length === 0 ? (
        <NothingYet page={page.value} />
      ) : (
        <Judged records={records} page={page.value} />
      )}
    </>
  );
}

function StabilityHeading({ page: { instrument } }: { readonly page: StabilityPage }) {
  return (
    <PageHeading
      title={`${words.title}: ${instrument.name}`}
      trail={instrumentTrail(instrument)}
      isInvented={instrument.isDemonstration}
    />
  );
}

function NothingYet({ page: { instrument, visitCount } }: { readonly page: StabilityPage }) {
  return (
    <EmptyState
      actions={
        <LinkButton look="primary" href={routeToHref({ screen: 'new-visit', instrumentId: instrument.id })}>
          {words.empty.begin}
        </LinkButton>
      }
    >
      <p>{visitCount === 0 ? words.empty.noVisit : words.empty.noReading}</p>
    </EmptyState>
  );
}

function Judged({ records, page }: { readonly records: Records; readonly page: StabilityPage }) {
  const { instrument, history } = page;
  const asked = useMemo(() => historyToJudge(history, instrument), [history, instrument]);
  const judgement = useJudgement(instrument.id, asked);
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const drift =
    judgement.state === 'judged' ? judgement.drift : judgement.state === 'judging' ? judgement.before : null;
  const setThreshold = async (slipThresholdCentsPerYear: number) => {
    const outcome = await records.saveInstrument({ ...instrument, slipThresholdCentsPerYear });
    setWriteFault(outcome.written ? null : outcome);
  };
  return (
    <>
      {judgement.state !== 'judged' && <JudgingState judgement={judgement} readingCount={history.readings.length} />}
      <WriteFault fault={writeFault} />
      {drift && <JudgedSections page={page} drift={drift} onThreshold={(chosen) => void setThreshold(chosen)} />}
    </>
  );
}
