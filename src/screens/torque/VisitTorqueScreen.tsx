import { formatDate, formatHumidity } from '../../piano/format.ts';
import type { VisitId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { visitTrail } from '../../ui/trails.ts';
import { LoadNote } from './LoadNote.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { TorqueDesk } from './TorqueDesk.tsx';
import { useTorqueDesk } from './useTorqueDesk.ts';
import { useVisitTorque, type VisitTorquePage } from './useVisitTorque.ts';

const words = texts.torque;

type Props = { readonly records: Records; readonly visitId: VisitId };

/** Torque readings of one visit: entering them, and what is there. */
export function VisitTorqueScreen({ records, visitId }: Props) {
  const page = useVisitTorque(records, visitId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  return <VisitTorque records={records} page={page.value} />;
}

function VisitTorque({ records, page }: { readonly records: Records; readonly page: VisitTorquePage }) {
  const desk = useTorqueDesk(records, page);
  const { instrument, readings, loads } = page;
  return (
    <>
      <Heading page={page} />
      <Section title={words.desk.title} note={words.desk.note}>
        <TorqueDesk instrument={instrument} readings={readings} desk={desk} />
      </Section>
      <Section title={words.readings.title} note={words.readings.note}>
        <ReadingTable
          records={records}
          readings={readings}
          loads={loads}
          onChange={(reading) => {
            desk.goToPin(reading, reading.direction);
            document.getElementById('torque-value')?.focus();
          }}
        />
        {readings.length > 0 && <LoadNote loads={loads} midis={readings.map(({ midi }) => midi)} />}
      </Section>
    </>
  );
}

function Heading({ page: { instrument, visit } }: { readonly page: VisitTorquePage }) {
  const date = formatDate(visit.visitedOn);
  return (
    <PageHeading
      title={words.title}
      trail={visitTrail(instrument, visit)}
      subtitle={`${date} · ${formatHumidity(visit.humidityPct)}`}
      isInvented={instrument.isDemonstration}
      actions={
        <LinkButton href={routeToHref({ screen: 'instrument-torque', instrumentId: instrument.id })}>
          {words.openOfInstrument}
        </LinkButton>
      }
    />
  );
}
