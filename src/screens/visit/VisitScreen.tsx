import { formatDate, formatHumidity, formatPitchStandard, formatTemperature } from '../../piano/format.ts';
import type { VisitId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { PhotographsSection } from '../../ui/PhotographsSection.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { SoundKeptField } from './SoundKeptField.tsx';
import { StartSurvey } from './StartSurvey.tsx';
import { SurveyTable } from './SurveyTable.tsx';
import { useVisit, type VisitPage } from './useVisit.ts';

const words = texts.visit;

type Props = { readonly records: Records; readonly visitId: VisitId };

export function VisitScreen({ records, visitId }: Props) {
  const { page, writeFault, startSurvey } = useVisit(records, visitId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  const { instrument, surveys } = page.value;
  // One that was begun and broken off before a note was kept is none.
  const hasAsFound = surveys.some(({ survey, keptNoteCount }) => survey.stage === 'as-found' && keptNoteCount > 0);
  return (
    <>
      <VisitHeading page={page.value} />
      <Section title={words.facts}>
        <VisitFacts page={page.value} />
      </Section>
      <Section title={words.surveys.title} note={words.surveys.note}>
        <SurveyTable surveys={surveys} />
      </Section>
      <Section title={words.start.title} note={words.start.note}>
        <StartSurvey
          key={String(hasAsFound)}
          instrument={instrument}
          suggestedStage={hasAsFound ? 'as-left' : 'as-found'}
          onStart={(choice) => void startSurvey(choice)}
          onRecordings={(choice, files) => void startSurvey(choice, files)}
        />
        <WriteFault fault={writeFault} />
        <SoundKeptField storedSize={page.value.soundByteCount} />
      </Section>
      <PhotographsSection records={records} instrumentId={instrument.id} visitId={visitId} />
    </>
  );
}

function VisitHeading({ page: { instrument, visit } }: { readonly page: VisitPage }) {
  return (
    <PageHeading
      title={words.title(formatDate(visit.visitedOn))}
      trail={instrumentTrail(instrument)}
      isInvented={instrument.isDemonstration}
      actions={
        <>
          <LinkButton href={routeToHref({ screen: 'edit-visit', visitId: visit.id })}>{words.edit}</LinkButton>
          <LinkButton href={routeToHref({ screen: 'visit-torque', visitId: visit.id })}>{texts.torque.open}</LinkButton>
        </>
      }
    />
  );
}

function VisitFacts({ page: { visit } }: { readonly page: VisitPage }) {
  const facts = [
    { label: words.humidity, value: formatHumidity(visit.humidityPct) },
    { label: words.temperature, value: formatTemperature(visit.temperatureC) },
    { label: words.pitchStandard, value: formatPitchStandard(visit.pitchStandardHz) },
    { label: words.by, value: visit.visitedBy },
    { label: words.remark, value: visit.remark },
  ];
  return <FactList facts={facts.filter((fact) => fact.value !== '')} />;
}
