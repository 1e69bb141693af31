import { useMemo } from 'react';
import { JudgingState } from '../../judging/JudgingState.tsx';
import { figureLanguage } from '../../piano/formatLanguage.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import type { OwnersPage } from '../../report/ownersPage.ts';
import { OWNERS_PAGE_CSS } from '../../report/ownersPageCss.ts';
import { ownersPageFile, ownersPageTree } from '../../report/ownersPageHtml.ts';
import { reportWordsIn } from '../../report/wordsIn.ts';
import { Button } from '../../ui/Button.tsx';
import { saveFile } from '../../ui/chartExport/saveFile.ts';
import { speakingName } from '../../ui/chartExport/speakingName.ts';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { PageSheet } from '../../ui/PageSheet.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { usePrintStyle } from '../../ui/usePrintStyle.ts';
import { OwnersChoices } from './OwnersChoices.tsx';
import { useOwnersPage } from './useOwnersPage.ts';

const reportWords = reportWordsIn(figureLanguage());
const words = texts.report;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

export function OwnersPageScreen({ records, instrumentId }: Props) {
  usePrintStyle('9mm 15mm 10mm');
  const view = useOwnersPage(records, instrumentId);
  if (view.kept.state !== 'ready') return <ReadState observed={view.kept} />;
  if (!view.kept.value) return <NotFound />;
  const { instrument } = view.kept.value.records;
  return (
    <>
      <div data-not-printed="">
        <PageHeading
          title={words.title}
          trail={instrumentTrail(instrument)}
          subtitle={words.next}
          actions={<PageActions page={view.page} />}
        />
        <OwnersChoices view={view} photographs={view.kept.value.photographs} />
        {view.judgement.state !== 'judged' && (
          <JudgingState judgement={view.judgement} readingCount={view.readingCount} />
        )}
      </div>
      {view.page && <Sheet page={view.page} />}
    </>
  );
}

/** There from the start, so that nothing moves when the page is made. */
function PageActions({ page }: { readonly page: OwnersPage | null }) {
  const save = () => {
    if (!page) return;
    const file = new Blob([ownersPageFile(page, reportWords)], { type: 'text/html' });
    saveFile(file, speakingName([page.name, words.fileName], 'html'));
  };
  return (
    <>
      <Button isDisabled={!page} onPress={save}>
        {words.save}
      </Button>
      <Button look="primary" isDisabled={!page} onPress={() => window.print()}>
        {words.print}
      </Button>
    </>
  );
}

function Sheet({ page }: { readonly page: OwnersPage }) {
  const tree = useMemo(() => ownersPageTree(page, reportWords), [page]);
  return <PageSheet page={tree} css={OWNERS_PAGE_CSS} />;
}
