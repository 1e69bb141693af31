import { JudgingState } from '../../judging/JudgingState.tsx';
import { formatDate } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { OverBlock } from './OverBlock.tsx';
import { SlipSection } from './SlipSection.tsx';
import { type InstrumentTorquePage, useInstrumentTorque, type VisitPins } from './useInstrumentTorque.ts';
import { useSlips } from './useSlips.ts';

const words = texts.torque;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

/** How the torque of the pins lies over the block, and whether the loose ones are the ones that slip. */
export function InstrumentTorqueScreen({ records, instrumentId }: Props) {
  const { page, shown, before, show } = useInstrumentTorque(records, instrumentId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  return (
    <>
      <Heading page={page.value} />
      {shown ? (
        <Torques records={records} page={page.value} shown={shown} before={before} onShow={show} />
      ) : (
        <NothingRead page={page.value} />
      )}
    </>
  );
}

type TorquesProps = {
  readonly records: Records;
  readonly page: InstrumentTorquePage;
  readonly shown: VisitPins;
  readonly before: VisitPins | null;
  readonly onShow: (visitId: string) => void;
};

function Torques({ records, page, shown, before, onShow }: TorquesProps) {
  const { history, judgement } = useSlips(records, page.instrument);
  const pins = judgement.state === 'judged' ? judgement.drift.pins : null;
  const slipping = pins?.filter((pin) => pin.isFlagged) ?? [];
  return (
    <>
      <Section title={words.over.title} note={words.over.note}>
        <OverBlock page={page} shown={shown} before={before} slipping={slipping} onShow={onShow} />
      </Section>
      <Section title={words.slip.title} note={words.slip.note}>
        {pins && <SlipSection instrument={page.instrument} torques={shown.pins} pins={pins} />}
        {history.state !== 'ready' && <ReadState observed={history} />}
        {history.state === 'ready' && judgement.state !== 'judged' && (
          <JudgingState judgement={judgement} readingCount={history.value.readings.length} />
        )}
      </Section>
    </>
  );
}

function Heading({ page: { instrument, latestVisit } }: { readonly page: InstrumentTorquePage }) {
  return (
    <PageHeading
      title={words.title}
      trail={instrumentTrail(instrument)}
      subtitle={instrument.name}
      isInvented={instrument.isDemonstration}
      actions={
        latestVisit && (
          <LinkButton href={routeToHref({ screen: 'visit-torque', visitId: latestVisit.id })}>
            {words.over.goToVisit} {formatDate(latestVisit.visitedOn)}
          </LinkButton>
        )
      }
    />
  );
}

function NothingRead({ page }: { readonly page: InstrumentTorquePage }) {
  return (
    <EmptyState>
      <p>{page.latestVisit ? words.over.empty : words.over.noVisits}</p>
    </EmptyState>
  );
}
