import { formatNotes } from '../../piano/format.ts';
import type { SurveyId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NoteStrip } from '../../ui/NoteStrip.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { countState, type NoteCell } from '../../ui/noteState.ts';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { replaceWith, routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { StripLegend } from '../../ui/StripLegend.tsx';
import { scopeText } from '../../ui/scopeText.ts';
import { texts } from '../../ui/texts.ts';
import { visitTrail } from '../../ui/trails.ts';
import { ClockSection } from './ClockSection.tsx';
import { InharmonicitySection } from './InharmonicitySection.tsx';
import { LifeSection } from './LifeSection.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { Repeatability } from './Repeatability.tsx';
import { SoundSection } from './SoundSection.tsx';
import { type SurveyPage, useSurvey } from './useSurvey.ts';
import { useSurveyCurves } from './useSurveyCurves.ts';

const words = texts.visit.survey;

type Props = { readonly records: Records; readonly surveyId: SurveyId };

export function SurveyScreen({ records, surveyId }: Props) {
  const page = useSurvey(records, surveyId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  const { instrument, survey, cells, kept, setAside, sounds, pooledRepeatability } = page.value;
  return (
    <>
      <SurveyHeading page={page.value} />
      <Section title={words.compass} note={<StripLegend cells={cells} />}>
        <NoteStrip
          cells={cells}
          nextMidi={null}
          breaksAfterMidi={instrument.strutsAfterMidi}
          summary={texts.common.noteStrip(countState(cells, 'kept'), countState(cells, 'doubtful'), cells.length)}
        />
        <MissingNotes cells={cells} />
      </Section>
      <Section title={words.readings} note={words.readingsNote}>
        {kept.length === 0 ? (
          <EmptyState>
            <p>{words.empty}</p>
          </EmptyState>
        ) : (
          <ReadingTable takes={kept} caption={words.caption} />
        )}
        <Repeatability pooled={pooledRepeatability} />
        {setAside.length > 0 && (
          <Disclosure summary={words.setAside(setAside.length)}>
            <ReadingTable takes={setAside} caption={words.showSetAside} />
          </Disclosure>
        )}
      </Section>
      {kept.length > 0 && <CurveSections instrument={instrument} kept={kept} />}
      <ClockSection survey={survey} />
      <SoundSection records={records} takes={[...kept, ...setAside]} sizes={sounds} />
      <Section title={texts.records.delete.title} note={texts.records.delete.note}>
        <DeleteButton
          records={records}
          target={{ table: 'surveys' as const, id: survey.id }}
          message={texts.records.delete.deletedSurvey(texts.common.stage[survey.stage])}
          onDeleted={() => replaceWith({ screen: 'visit', visitId: survey.visitId })}
        >
          {texts.records.delete.survey}
        </DeleteButton>
      </Section>
    </>
  );
}

function CurveSections({ instrument, kept }: Pick<SurveyPage, 'instrument' | 'kept'>) {
  const curves = useSurveyCurves(instrument, kept);
  if (!curves)
    return [texts.charts.inharmonicity.title, texts.charts.life.title].map((title) => (
      <Section key={title} title={title}>
        <p>{texts.charts.workingOut}</p>
      </Section>
    ));
  const heardMidi = kept.map((take) => take.midi);
  return (
    <>
      <InharmonicitySection instrument={instrument} inharmonicity={curves.inharmonicity} heardMidi={heardMidi} />
      <LifeSection instrument={instrument} life={curves.life} />
    </>
  );
}

function SurveyHeading({ page: { instrument, visit, survey } }: { readonly page: SurveyPage }) {
  return (
    <PageHeading
      title={words.title(texts.common.stage[survey.stage])}
      trail={visitTrail(instrument, visit)}
      subtitle={[texts.common.strings[survey.strings], scopeText(survey.scope)].filter(Boolean).join('; ')}
      isInvented={instrument.isDemonstration}
      actions={
        <LinkButton
          look={survey.finishedAt === null ? 'primary' : 'plain'}
          href={routeToHref({ screen: 'recording', surveyId: survey.id })}
        >
          {survey.finishedAt === null ? words.goOn : words.record}
        </LinkButton>
      }
    />
  );
}

/** Names what is not there, since a gap in a picture is easily overlooked. */
function MissingNotes({ cells }: { readonly cells: readonly NoteCell[] }) {
  const missing = cells.filter((cell) => cell.state === 'missing');
  if (missing.length === 0 || missing.length === cells.length) return null;
  return (
    <p>
      {words.skipped}: {formatNotes(missing.map((cell) => cell.midi))}
    </p>
  );
}
