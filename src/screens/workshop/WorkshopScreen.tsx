import type { Records } from '../../records/records.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { FirstSteps } from './FirstSteps.tsx';
import { InstallProgress } from './InstallProgress.tsx';
import { InstrumentList } from './InstrumentList.tsx';
import { useWorkshop, type Workshop } from './useWorkshop.ts';

const words = texts.workshop;

export function WorkshopScreen({ records }: { readonly records: Records }) {
  const workshop = useWorkshop(records);
  if (workshop.instruments.state !== 'ready') return <ReadState observed={workshop.instruments} />;
  const summaries = workshop.instruments.value;
  const isEmpty = summaries.length === 0;
  const hasDemonstration = summaries.some(({ instrument }) => instrument.isDemonstration);
  const isInstalling = workshop.installingShare !== null;
  return (
    <>
      <PageHeading
        title={isEmpty ? words.empty.title : words.title}
        subtitle={isEmpty ? undefined : words.subtitle(summaries.length)}
        actions={
          !isEmpty && (
            <>
              <LinkButton href={routeToHref({ screen: 'held' })}>{texts.held.link}</LinkButton>
              <LinkButton look="primary" href={routeToHref({ screen: 'new-instrument' })}>
                {words.add}
              </LinkButton>
            </>
          )
        }
      />
      <WriteFault fault={workshop.fault} />
      <DamagedNotice count={records.damagedRows().length} />
      {isInstalling && <InstallProgress share={workshop.installingShare ?? 0} />}
      {isEmpty && !isInstalling && <FirstSteps onLookAround={() => void workshop.install()} />}
      {!isEmpty && <InstrumentList summaries={summaries} />}
      {!isEmpty && !isInstalling && <DemonstrationSection workshop={workshop} isThere={hasDemonstration} />}
    </>
  );
}

function DemonstrationSection({ workshop, isThere }: { readonly workshop: Workshop; readonly isThere: boolean }) {
  const { what, offer, unfinished, remove, install, complete } = words.demonstration;
  const isHalf = isThere && workshop.isUnfinished;
  return (
    <Section title={words.demonstration.title}>
      <p>{isHalf ? unfinished : isThere ? what : offer}</p>
      {(isHalf || !isThere) && <Button onPress={() => void workshop.install()}>{isHalf ? complete : install}</Button>}
      {isThere && <Button onPress={() => void workshop.remove()}>{remove}</Button>}
    </Section>
  );
}

function DamagedNotice({ count }: { readonly count: number }) {
  if (count === 0) return null;
  return (
    <Notice kind="caution" word={texts.common.cautionWord}>
      {texts.common.damaged(count)}
    </Notice>
  );
}
