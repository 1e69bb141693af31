/** `archive check FILE.zip`. */
import { complaintText } from '../../files/archive/archiveFault.ts';
import { type ArchiveReport, checkArchive, type InstrumentInArchive } from '../../files/archive/checkArchive.ts';
import { formatCount } from '../../piano/format.ts';
import { formatSize } from '../../piano/formatSize.ts';
import { parseArguments } from '../commandOptions.ts';
import { withFileBytes } from '../fileBytes.ts';
import { type Terminal, UsageFault } from '../terminal.ts';
import { type Column, textTable } from '../textTable.ts';
import { NODE_BYTE_WORK } from './nodeByteWork.ts';

/** Exit status 0 where the archive is whole, else 2. */
export async function checkArchiveFile(args: readonly string[], terminal: Terminal): Promise<number> {
  const { files, values } = parseArguments(args, { json: { type: 'boolean' } });
  const [file] = files;
  if (file === undefined || files.length > 1)
    throw new UsageFault(`archive check takes one FILE.zip, got ${files.length}; archive --help explains it`);
  const report = await checkFile(file, terminal);
  if (values.json === true) terminal.print(JSON.stringify(archiveDocument(file, report), null, 2));
  else if (report.refusal === null) terminal.print(archiveText(file, report)); // else the one complaint says it all
  if (report.isWhole) return 0;
  terminal.complain(`stillpin: ${file} is not whole: ${firstComplaint(report)}`);
  return 2;
}

export async function checkFile(file: string, terminal: Terminal): Promise<ArchiveReport> {
  const onProgress = (share: number) => terminal.progress(`${file}: ${Math.round(100 * share)} % read`);
  const report = await withFileBytes(file, (source) => checkArchive(source, { onProgress, byteWork: NODE_BYTE_WORK }));
  terminal.endProgress();
  return report;
}

export function firstComplaint({ complaints, complaintCount }: ArchiveReport): string {
  const [first] = complaints;
  const more = complaintCount > 1 ? ` (and ${complaintCount - 1} more; archive check lists them)` : '';
  return `${first ? complaintText(first) : 'it cannot be read'}${more}`;
}

function archiveDocument(file: string, report: ArchiveReport) {
  const { isWhole, refusal, complaints, complaintCount, warnings, createdAt, programVersion, leftOut } = report;
  const { photographs, photographFiles, ...tables } = report.counts;
  return {
    file,
    whole: isWhole,
    refusal,
    complaints: complaints.map((complaint) => ({ ...complaint, text: complaintText(complaint) })),
    complaintCount,
    warnings,
    createdAt,
    programVersion,
    leftOut,
    bytes: report.byteCount,
    unpackedBytes: report.unpackedBytes,
    tables: { ...tables, photographs, partials: report.partialCount },
    clips: { count: report.counts.sounds, bytes: report.soundBytes },
    photographs: { count: photographFiles, bytes: report.photographBytes },
    instruments: report.instruments,
  };
}

/** A single complaint stands on the line of the error, which follows. */
function archiveText(file: string, report: ArchiveReport): string {
  const { isWhole, complaintCount, complaints, warnings, createdAt, programVersion, leftOut } = report;
  const state = isWhole ? 'whole and readable' : `not whole: ${formatCount(complaintCount, 'complaint', 'complaints')}`;
  const origin = createdAt === null ? [] : [`written ${createdAt} by version ${programVersion}`];
  const lines = [
    `${file}: ${state}`,
    ...origin,
    ...(leftOut.length > 0 ? [`left out on purpose: ${leftOut.join(', ')}`] : []),
    ...(complaintCount > 1 ? complaints.map((complaint) => `  ${complaintText(complaint)}`) : []),
    ...(complaints.length < complaintCount ? [`  … and ${complaintCount - complaints.length} more`] : []),
    ...warnings.map((warning) => `  note: ${warning}`),
  ];
  return [...lines, '', contentsText(report)].join('\n');
}

function contentsText(report: ArchiveReport): string {
  const { photographFiles, ...counts } = report.counts;
  const rows = [...Object.entries(counts), ['partials', report.partialCount] as const].filter(([, count]) => count > 0);
  return [
    textTable(COUNT_COLUMNS, rows),
    '',
    `${formatCount(report.counts.sounds, 'clip', 'clips')} (${size(report.soundBytes)}), ` +
      `${formatCount(photographFiles, 'photograph', 'photographs')} (${size(report.photographBytes)}); ` +
      `${size(report.byteCount)}, unpacked ${size(report.unpackedBytes)}`,
    ...(report.instruments.length > 0 ? ['', textTable(INSTRUMENT_COLUMNS, report.instruments)] : []),
  ].join('\n');
}

const COUNT_COLUMNS: readonly Column<readonly [string, number]>[] = [
  { title: 'table', align: 'left', text: ([name]) => name },
  { title: 'rows', align: 'right', text: ([, count]) => String(count) },
];

const INSTRUMENT_COLUMNS: readonly Column<InstrumentInArchive>[] = [
  { title: 'instrument', align: 'left', text: ({ name, id }) => name || id },
  { title: 'visits', align: 'right', text: ({ visitCount }) => String(visitCount) },
  { title: 'from', align: 'left', text: ({ firstVisitOn }) => firstVisitOn ?? '' },
  { title: 'to', align: 'left', text: ({ lastVisitOn }) => lastVisitOn ?? '' },
  { title: 'takes', align: 'right', text: ({ takeCount }) => String(takeCount) },
  { title: 'remark', align: 'left', text: ({ isDeleted }) => (isDeleted ? 'in the bin' : '') },
];

/** With a space that every terminal draws alike. */
function size(byteCount: number): string {
  return formatSize(byteCount).replace('\u00a0', ' ');
}
