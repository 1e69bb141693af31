import { complaintText } from '../../files/archive/archiveFault.ts';
import type { ArchiveReport } from '../../files/archive/checkArchive.ts';
import { formatDate } from '../../piano/format.ts';
import { formatSize } from '../../piano/formatSize.ts';
import type { InstrumentMerge } from '../../records/mergeArchive.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import { summaryOf } from './mergeWords.ts';
import styles from './records.module.css';
import type { Import, Seen } from './useImport.ts';

const words = texts.records.import;
/** Complaints that are shown; the command line lists all. */
const SHOWN_COMPLAINTS = 8;

/** What is in a file, and what bringing it in would do. */
export function SeenArchive({ bringing, seen }: { readonly bringing: Import; readonly seen: Seen }) {
  const { file, report, preview } = seen;
  const changing = preview?.instruments.filter(isChanging) ?? [];
  const isNew = preview !== null && (changing.length > 0 || preview.soundCount + preview.photographCount > 0);
  return (
    <>
      <h3>{file.name}</h3>
      {report.refusal === null && <FactList facts={factsOf(report)} />}
      <Complaints report={report} />
      {preview && changing.length > 0 && (
        <DataTable
          caption={words.caption}
          columns={COLUMNS}
          rows={changing}
          rowKey={({ instrumentId }) => instrumentId ?? ''}
          stacksWhenNarrow
        />
      )}
      {preview && <p>{isNew ? words.would(summaryOf(preview)) : words.nothingNew}</p>}
      {preview && preview.unplacedCount > 0 && <p>{words.unplaced(preview.unplacedCount)}</p>}
      <p className={styles.actions}>
        {isNew && (
          <Button look="primary" onPress={() => void bringing.bringIn(seen)}>
            {report.isWhole ? words.bringIn : words.bringInWhole}
          </Button>
        )}
        <Button look="quiet" onPress={bringing.putAway}>
          {texts.common.putAway}
        </Button>
      </p>
    </>
  );
}

const COLUMNS: readonly Column<InstrumentMerge>[] = [
  {
    key: 'name',
    title: words.instrument,
    isRowHeader: true,
    cell: ({ name, instrumentId }) => (instrumentId === null ? words.noInstrument : name === '' ? words.unnamed : name),
  },
  { key: 'new', title: words.newRows, isNumber: true, cell: (row) => row.newRows },
  { key: 'changed', title: words.changedRows, isNumber: true, cell: (row) => row.changedRows },
  { key: 'deleted', title: words.deletedRows, isNumber: true, cell: (row) => row.deletedRows },
  { key: 'rivals', title: words.rivals, isNumber: true, cell: (row) => row.rivals },
];

function isChanging({ newRows, changedRows, deletedRows, rivals }: InstrumentMerge): boolean {
  return newRows + changedRows + deletedRows + rivals > 0;
}

function factsOf(report: ArchiveReport) {
  const { counts, createdAt, programVersion, byteCount, leftOut } = report;
  const left = leftOut.map((part) => texts.records.export.part[part]).join(', ');
  return [
    { label: words.written, value: createdAt === null ? words.unknown : formatDate(createdAt) },
    { label: words.by, value: programVersion || words.unknown },
    { label: words.instruments, value: counts.instruments },
    { label: words.visits, value: counts.visits },
    { label: words.readings, value: counts.takes },
    { label: words.files, value: words.fileCounts(counts.sounds, counts.photographFiles) },
    { label: words.size, value: formatSize(byteCount) },
    ...(left === '' ? [] : [{ label: words.leftOut, value: left }]),
  ];
}

function Complaints({ report }: { readonly report: ArchiveReport }) {
  if (report.isWhole) return <p>{words.whole}</p>;
  const further = report.complaintCount - Math.min(SHOWN_COMPLAINTS, report.complaints.length);
  return (
    <Notice kind="caution" word={texts.common.cautionWord}>
      {report.refusal === null ? words.notWhole : words.refused}
      <ul>
        {report.complaints.slice(0, SHOWN_COMPLAINTS).map((complaint) => (
          <li key={complaintText(complaint)}>{complaintText(complaint)}</li>
        ))}
      </ul>
      {further > 0 && words.further(further)}
    </Notice>
  );
}
