import { noteCount } from '../../piano/compass.ts';
import { formatNoteRange } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { FactList } from '../../ui/FactList.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { PhotographsSection } from '../../ui/PhotographsSection.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { workshopTrail } from '../../ui/trails.ts';
import { ChangeSection } from './ChangeSection.tsx';
import { EventSection } from './EventSection.tsx';
import { PagesOfInstrument } from './PagesOfInstrument.tsx';
import { StabilityLine } from './StabilityLine.tsx';
import { type InstrumentPage, useInstrument } from './useInstrument.ts';
import { VisitActions } from './VisitActions.tsx';
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
      <InstrumentHeading page={page} />
      <StabilityLine instrument={instrument} history={view.history} />
      <Section title={words.visits.title} note={words.visits.note}>
        <VisitTable page={page} figures={view.figures} />
      </Section>
      <Section title={words.change.title} note={words.change.note}>
        <ChangeSection instrument={instrument} view={view} />
      </Section>
      <Section title={words.events.title} note={words.events.note}>
        <EventSection records={records} instrument={instrument} events={page.events} />
      </Section>
      <FactsSection instrument={instrument} />
      <PhotographsSection records={records} instrumentId={instrument.id} />
    </>
  );
}

function InstrumentHeading({ page }: { readonly page: InstrumentPage }) {
  const { instrument } = page;
  const { compass } = instrument;
  const parts = [texts.workshop.kinds[instrument.kind]];
  if (instrument.builtYear !== null) parts.push(words.facts.built(instrument.builtYear));
  if (instrument.serialNumber !== '') parts.push(words.facts.serial(instrument.serialNumber));
  parts.push(`${formatNoteRange(compass.lowestMidi, compass.highestMidi)} (${noteCount(compass)})`);
  return (
    <>
      <PageHeading
        title={instrument.name}
        trail={workshopTrail()}
        subtitle={parts.join(' · ')}
        isInvented={instrument.isDemonstration}
        actions={<VisitActions page={page} />}
      />
      <PagesOfInstrument instrumentId={instrument.id} />
    </>
  );
}

/** What is known of it beyond its name; nothing where nothing was entered. */
function FactsSection({ instrument: { pinBlock, pinBlockKind, remark } }: { readonly instrument: Instrument }) {
  const facts = [
    {
      label: texts.workshop.form.pinBlockKind,
      value: pinBlockKind ? texts.workshop.form.pinBlockKinds[pinBlockKind] : '',
    },
    { label: words.facts.pinBlock, value: pinBlock },
    { label: words.facts.remark, value: remark },
  ].filter((fact) => fact.value !== '');
  if (facts.length === 0) return null;
  return (
    <Section title={words.facts.title}>
      <FactList facts={facts} />
    </Section>
  );
}
