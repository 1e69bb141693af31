import { formatCents, formatNote } from '../../piano/format.ts';
import type { TakeId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { PartialTable } from '../../ui/PartialTable.tsx';
import { PhotographsSection } from '../../ui/PhotographsSection.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { replaceWith, routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { TakeFigures } from '../../ui/TakeFigures.tsx';
import { texts } from '../../ui/texts.ts';
import { visitTrail } from '../../ui/trails.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { SoundSection } from './SoundSection.tsx';
import { type TakePage, useTake } from './useTake.ts';

const words = texts.take;

type Props = { readonly records: Records; readonly takeId: TakeId };

export function TakeScreen({ records, takeId }: Props) {
  const { page, writeFault, setKept } = useTake(records, takeId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  const { take, others } = page.value;
  return (
    <>
      <TakeHeading page={page.value} />
      <Section title={words.figures} note={take.isKept ? words.isKept : words.isAside}>
        <TakeFigures reading={take.reading} />
        <WriteFault fault={writeFault} />
        <Button onPress={() => void setKept(!take.isKept)}>{take.isKept ? words.setAside : words.keep}</Button>
        <DeleteButton
          records={records}
          target={{ table: 'takes' as const, id: take.id }}
          message={texts.records.delete.deletedTake(formatNote(take.midi))}
          onDeleted={() => replaceWith({ screen: 'survey', surveyId: take.surveyId })}
        >
          {texts.records.delete.take}
        </DeleteButton>
      </Section>
      <SoundSection records={records} take={take} />
      <Section title={words.partials} note={words.partialsNote}>
        <PartialTable partials={take.reading.partials} />
      </Section>
      {others.length > 0 && (
        <Section title={words.others}>
          <ul>
            {others.map((other) => (
              <li key={other.id}>
                <a href={routeToHref({ screen: 'take', takeId: other.id })}>
                  {formatCents(other.reading.offsetCents, other.reading.offsetStandardUncertaintyCents)},{' '}
                  {other.isKept ? texts.common.noteStates.kept : words.asideWord}
                </a>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <PhotographsSection records={records} instrumentId={take.instrumentId} midi={take.midi} />
    </>
  );
}

function TakeHeading({ page: { take, survey, visit, instrument } }: { readonly page: TakePage }) {
  const subtitle = `${texts.common.stringPosition[take.stringPosition]}, ${texts.common.stage[survey.stage]}`;
  return (
    <PageHeading
      title={words.title(formatNote(take.midi))}
      trail={[
        ...visitTrail(instrument, visit),
        {
          label: texts.visit.survey.title(texts.common.stage[survey.stage]),
          href: routeToHref({ screen: 'survey', surveyId: survey.id }),
        },
      ]}
      subtitle={subtitle}
      isInvented={instrument.isDemonstration}
    />
  );
}
