import { complaintText } from '../../files/archive/archiveFault.ts';
import type { ArchiveReport } from '../../files/archive/checkArchive.ts';
import { formatCount, formatDate } from '../../piano/format.ts';
import { formatSize } from '../../piano/formatSize.ts';
import type { InstrumentMerge, MergeReport } from '../../records/mergeArchive.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { FilePicker } from '../../ui/FilePicker.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './records.module.css';
import { type Import, type Seen, useImport } from './useImport.ts';

const words = texts.records.import;
/** Complaints that are shown; the command line lists all. */
const SHOWN_COMPLAINTS = 8;

export function ImportSection({ records }: { readonly records: Records }) {
  const bringing = useImport(records);
  const { state, interrupted, look, stop } = bringing;
  const isRunning = state.phase === 'looking' || state.phase === 'bringing';
  return (
    <Section title={words.title} note={words.note}>
      {interrupted !== null && !isRunning && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.interrupted(interrupted)}
        </Notice>
      )}
      <FilePicker accept=".zip,application/zip" isDisabled={isRunning} onPick={([file]) => file && void look(file)}>
        {words.choose}
      </FilePicker>
      {isRunning && (
        <div className={styles.running}>
          <progress className={styles.progress} aria-label={words.label} value={state.share} max={1} />
          <p>{state.phase === 'looking' ? words.looking : words.bringing}</p>
          <Button onPress={stop}>{texts.records.writing.stop}</Button>
        </div>
      )}
      {state.phase === 'seen' && <SeenArchive bringing={bringing} seen={state.seen} />}
      <Ending bringing={bringing} />
    </Section>
  );
}

function Ending({ bringing: { state } }: { readonly bringing: Import }) {
  return (
    <>
      <p role="status">
        {state.phase === 'done' && words.done(summaryOf(state.report))}
        {state.phase === 'stopped' && (state.wasWriting ? words.stoppedWriting : words.stopped)}
      </p>
      {state.phase === 'failed' && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(state.message)}
        </Notice>
      )}
    </>
  );
}

/** What is in a file, and what bringing it in would do. */
function SeenArchive({ bringing, seen }: { readonly bringing: Import; readonly seen: Seen }) {
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

/** @example '240 new records, 3 changed, 12 sounds' */
function summaryOf({ instruments, soundCount, photographCount }: MergeReport): string {
  const sum = (count: (row: InstrumentMerge) => number) => instruments.reduce((all, row) => all + count(row), 0);
  const parts = [
    [sum((row) => row.newRows), words.sum.newRows],
    [sum((row) => row.changedRows), words.sum.changedRows],
    [sum((row) => row.deletedRows), words.sum.deletedRows],
    [sum((row) => row.rivals), words.sum.rivals],
    [soundCount, words.sum.sounds],
    [photographCount, words.sum.photographs],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, [one, many]]) => formatCount(count, one, many));
  return told.length === 0 ? words.sum.nothing : told.join(', ');
}
