import { formatDate } from '../../piano/format.ts';
import type { InstrumentId, VisitId } from '../../piano/ids.ts';
import type { Visit } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { FormActions, FormPage } from '../../ui/FormPage.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { type Route, replaceWith, routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { useVisitForm } from './useVisitForm.ts';
import { ClimateFields, PitchFields, WhenFields } from './VisitFields.tsx';

const words = texts.visit.form;

type Props = { readonly records: Records } & ({ readonly instrumentId: InstrumentId } | { readonly visitId: VisitId });

export function VisitFormScreen({ records, ...subject }: Props) {
  const form = useVisitForm(records, subject);
  if (form.stored.state !== 'ready') return <ReadState observed={form.stored} />;
  if (!form.stored.value) return <NotFound />;
  const { instrument, visit } = form.stored.value;
  const back: Route = visit
    ? { screen: 'visit', visitId: visit.id }
    : { screen: 'instrument', instrumentId: instrument.id };
  return (
    <FormPage faults={form.faults} onSubmit={() => void form.save()}>
      <PageHeading title={visit ? words.editTitle : words.newTitle} trail={instrumentTrail(instrument)} />
      <WhenFields form={form} />
      <ClimateFields form={form} />
      <PitchFields form={form} />
      <WriteFault fault={form.writeFault} />
      <FormActions>
        <Button look="primary" isLarge isSubmit>
          {visit ? texts.common.save : words.saveAndGo}
        </Button>
        <LinkButton look="quiet" isLarge href={routeToHref(back)}>
          {texts.common.cancel}
        </LinkButton>
      </FormActions>
      {visit && <DeleteVisit records={records} visit={visit} />}
    </FormPage>
  );
}

function DeleteVisit({ records, visit }: { readonly records: Records; readonly visit: Visit }) {
  return (
    <Section title={texts.records.delete.title} note={texts.records.delete.note}>
      <DeleteButton
        records={records}
        target={{ table: 'visits' as const, id: visit.id }}
        message={texts.records.delete.deletedVisit(formatDate(visit.visitedOn))}
        onDeleted={() => replaceWith({ screen: 'instrument', instrumentId: visit.instrumentId })}
      >
        {texts.records.delete.visit}
      </DeleteButton>
    </Section>
  );
}
