import { useState } from 'react';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { slipThresholdOf } from '../../stability/slipThreshold.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { JudgedSections } from './JudgedSections.tsx';
import styles from './stability.module.css';
import { type Judgement, useJudgement } from './useJudgement.ts';
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
  const judgement = useJudgement(page.instrument.id, page.history, slipThresholdOf(page.instrument));
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const drift =
    judgement.state === 'judged' ? judgement.drift : judgement.state === 'judging' ? judgement.before : null;
  const setThreshold = async (slipThresholdCentsPerYear: number) => {
    const outcome = await records.saveInstrument({ ...page.instrument, slipThresholdCentsPerYear });
    setWriteFault(outcome.written ? null : outcome);
  };
  return (
    <>
      {judgement.state !== 'judged' && <Waiting judgement={judgement} readingCount={page.history.readings.length} />}
      <WriteFault fault={writeFault} />
      {drift && <JudgedSections page={page} drift={drift} onThreshold={(chosen) => void setThreshold(chosen)} />}
    </>
  );
}

type WaitingProps = {
  readonly judgement: Exclude<Judgement, { state: 'judged' }>;
  readonly readingCount: number;
};

function Waiting({ judgement, readingCount }: WaitingProps) {
  if (judgement.state === 'judging')
    return (
      <div className={styles.running}>
        <progress className={styles.progress} aria-label={words.title} />
        <span role="status">{words.judging.working(readingCount)}</span>
        <Button onPress={judgement.cancel}>{words.judging.cancel}</Button>
      </div>
    );
  return (
    <div className={styles.running}>
      {judgement.state === 'failed' ? (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.judging.failed(judgement.detail)}
        </Notice>
      ) : (
        <p>{words.judging.cancelled}</p>
      )}
      <Button look="primary" onPress={judgement.again}>
        {words.judging.again}
      </Button>
    </div>
  );
}
