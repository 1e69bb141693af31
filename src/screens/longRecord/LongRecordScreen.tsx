import { useMemo } from 'react';
import { writeCsvTable } from '../../files/csvTable.ts';
import { JudgingState } from '../../judging/JudgingState.tsx';
import { figureLanguage } from '../../piano/formatLanguage.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import type { FullRecords } from '../../report/fullRecords.ts';
import { LONG_RECORD_CSS, longRecordFile, longRecordTree } from '../../report/longRecord.ts';
import { eventSheet, readingSheet } from '../../report/longRecordSheets.ts';
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
import styles from './longRecord.module.css';
import { useLongRecord } from './useLongRecord.ts';

const reportWords = reportWordsIn(figureLanguage());
const words = texts.longRecord;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

export function LongRecordScreen({ records, instrumentId }: Props) {
  usePrintStyle('11mm 13mm 12mm');
  const { kept, judgement, readingCount, record } = useLongRecord(records, instrumentId);
  if (kept.state !== 'ready') return <ReadState observed={kept} />;
  if (!kept.value) return <NotFound />;
  return (
    <>
      <div data-not-printed="">
        <PageHeading
          title={words.title}
          trail={instrumentTrail(kept.value.records.instrument)}
          subtitle={words.subtitle}
          actions={<RecordActions record={record} />}
        />
        <p className={styles.note}>{words.csvNote}</p>
        {judgement.state !== 'judged' && <JudgingState judgement={judgement} readingCount={readingCount} />}
      </div>
      {record && <RecordSheet record={record} />}
    </>
  );
}

/** There from the start, so that nothing moves when the record is made. */
function RecordActions({ record }: { readonly record: FullRecords | null }) {
  const { fileNames } = words;
  const save = (textOf: (record: FullRecords) => string, type: string, name: string, extension: string) => {
    if (record) saveFile(new Blob([textOf(record)], { type }), speakingName([record.instrument.name, name], extension));
  };
  return (
    <>
      <Button
        isDisabled={!record}
        onPress={() => save((all) => writeCsvTable(readingSheet(all)), 'text/csv', fileNames.readings, 'csv')}
      >
        {words.saveReadings}
      </Button>
      <Button
        isDisabled={!record}
        onPress={() => save((all) => writeCsvTable(eventSheet(all)), 'text/csv', fileNames.work, 'csv')}
      >
        {words.saveWork}
      </Button>
      <Button
        isDisabled={!record}
        onPress={() => save((all) => longRecordFile(all, reportWords), 'text/html', fileNames.page, 'html')}
      >
        {words.savePage}
      </Button>
      <Button look="primary" isDisabled={!record} onPress={() => window.print()}>
        {words.print}
      </Button>
    </>
  );
}

function RecordSheet({ record }: { readonly record: FullRecords }) {
  const tree = useMemo(() => longRecordTree(record, reportWords), [record]);
  return <PageSheet page={tree} css={LONG_RECORD_CSS} />;
}
