import type { InstrumentId } from '../../piano/ids.ts';
import type { Instrument } from '../../piano/instrument.ts';
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
import { instrumentTrail, workshopTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { BlockFields, IdentityFields, RowFields } from './InstrumentFields.tsx';
import { useInstrumentForm } from './useInstrumentForm.ts';

const words = texts.workshop.form;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId | null };

export function InstrumentFormScreen({ records, instrumentId }: Props) {
  const form = useInstrumentForm(records, instrumentId);
  if (form.stored.state !== 'ready') return <ReadState observed={form.stored} />;
  const instrument = form.stored.value;
  if (instrument === undefined) return <NotFound />;
  const back: Route = instrument ? { screen: 'instrument', instrumentId: instrument.id } : { screen: 'workshop' };
  return (
    <FormPage faults={form.faults} onSubmit={() => void form.save()}>
      <PageHeading
        title={instrument ? words.editTitle(instrument.name) : words.newTitle}
        trail={instrument ? instrumentTrail(instrument) : workshopTrail()}
      />
      <IdentityFields form={form} />
      <RowFields form={form} />
      <BlockFields form={form} />
      <WriteFault fault={form.writeFault} />
      <FormActions>
        <Button look="primary" isLarge isSubmit>
          {texts.common.save}
        </Button>
        <LinkButton look="quiet" isLarge href={routeToHref(back)}>
          {texts.common.cancel}
        </LinkButton>
      </FormActions>
      {instrument && <DeleteInstrument records={records} instrument={instrument} />}
    </FormPage>
  );
}

function DeleteInstrument({ records, instrument }: { readonly records: Records; readonly instrument: Instrument }) {
  return (
    <Section title={texts.records.delete.title} note={texts.records.delete.note}>
      <DeleteButton
        records={records}
        target={{ table: 'instruments' as const, id: instrument.id }}
        message={texts.records.delete.deletedInstrument(instrument.name)}
        onDeleted={() => replaceWith({ screen: 'workshop' })}
      >
        {texts.records.delete.instrument}
      </DeleteButton>
    </Section>
  );
}
