import { noteCount } from '../../piano/compass.ts';
import { formatNoteRange } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { DemonstrationMark } from '../../ui/DemonstrationMark.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { PhotographsSection } from '../../ui/PhotographsSection.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { ChangeSection } from './ChangeSection.tsx';
import { EventSection } from './EventSection.tsx';
import { StabilityLine } from './StabilityLine.tsx';
import { useInstrument } from './useInstrument.ts';
import { VisitTable } from './VisitTable.tsx';

const words = texts.instrument;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

export function InstrumentScreen({ records, instrumentId }: Props) {
  const view = useInstrument(records, instrumentId);
  if (view.page.state !== 'ready') return <ReadState observed={view.page} />;
  const page = view.page.value;
  if (!page) return <NotFound />;
  const { instrument } = page;
  return (
    <>
      <InstrumentHeading instrument={instrument} />
      <StabilityLine instrument={instrument} history={view.history} />
      <Section title={words.visits.title} note={words.visits.note}>
        <VisitTable page={page} figures={view.figures} />
      </Section>
      <Section title={words.change.title} note={words.change.note}>
        <ChangeSection instrument={instrument} events={page.events} view={view} />
      </Section>
      <Section title={words.events.title} note={words.events.note}>
        <EventSection records={records} instrument={instrument} events={page.events} />
      </Section>
      <PhotographsSection records={records} instrumentId={instrument.id} />
    </>
  );
}

function InstrumentHeading({ instrument }: { readonly instrument: Instrument }) {
  const { compass, pinBlock, pinBlockKind, remark } = instrument;
  const facts = [
    {
      label: texts.workshop.form.pinBlockKind,
      value: pinBlockKind ? texts.workshop.form.pinBlockKinds[pinBlockKind] : '',
    },
    { label: words.facts.pinBlock, value: pinBlock },
    { label: words.facts.remark, value: remark },
  ].filter((fact) => fact.value !== '');
  const parts = [texts.workshop.kinds[instrument.kind]];
  if (instrument.builtYear !== null) parts.push(words.facts.built(instrument.builtYear));
  if (instrument.serialNumber !== '') parts.push(words.facts.serial(instrument.serialNumber));
  parts.push(`${formatNoteRange(compass.lowestMidi, compass.highestMidi)} (${noteCount(compass)})`);
  return (
    <>
      <PageHeading
        title={instrument.name}
        trail={[{ label: texts.common.workshop, href: routeToHref({ screen: 'workshop' }) }]}
        trailLabel={texts.common.trail}
        subtitle={
          <>
            {parts.join(' · ')} {instrument.isDemonstration && <DemonstrationMark />}
          </>
        }
        actions={
          <>
            <LinkButton href={routeToHref({ screen: 'edit-instrument', instrumentId: instrument.id })}>
              {words.edit}
            </LinkButton>
            <LinkButton href={routeToHref({ screen: 'owners-page', instrumentId: instrument.id })}>
              {texts.report.link}
            </LinkButton>
            <LinkButton href={routeToHref({ screen: 'long-record', instrumentId: instrument.id })}>
              {texts.longRecord.link}
            </LinkButton>
            <LinkButton href={routeToHref({ screen: 'hearing', instrumentId: instrument.id })}>
              {texts.hearing.link}
            </LinkButton>
            <LinkButton href={routeToHref({ screen: 'stringing', instrumentId: instrument.id })}>
              {texts.stringing.link}
            </LinkButton>
            <LinkButton href={routeToHref({ screen: 'instrument-torque', instrumentId: instrument.id })}>
              {texts.torque.open}
            </LinkButton>
            <LinkButton href={routeToHref({ screen: 'strings', instrumentId: instrument.id })}>
              {texts.strings.link}
            </LinkButton>
            <LinkButton look="primary" href={routeToHref({ screen: 'new-visit', instrumentId: instrument.id })}>
              {words.newVisit}
            </LinkButton>
          </>
        }
      />
      {facts.length > 0 && (
        <Section title={words.facts.title}>
          <FactList facts={facts} />
        </Section>
      )}
    </>
  );
}
