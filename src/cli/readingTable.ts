/** Readings as a table for people. Figures are written by piano/format. */
import type { PartialDocument, ReadingDocument } from '../files/measureDocument.ts';
import {
  formatBeatRate,
  formatCentsUncertainty,
  formatCentsValue,
  formatHz,
  formatInharmonicity,
  formatLevel,
  formatNote,
  formatSeconds,
} from '../piano/format.ts';
import type { TakeFault } from '../piano/reading.ts';
import { type Column, textTable } from './textTable.ts';

export type ReadingRow = {
  /** Empty where all rows come from one file. */
  readonly file: string;
  readonly reading: ReadingDocument | null;
  /** What to say instead where there is no reading, or beside it. */
  readonly remark: string;
};

export function readingTable(rows: readonly ReadingRow[]): string {
  return textTable(READING_COLUMNS, rows);
}

export function partialTable(partials: readonly PartialDocument[]): string {
  return textTable(PARTIAL_COLUMNS, partials);
}

const FAULT_WORDS: Readonly<Record<TakeFault, string>> = {
  clipped: 'clipped',
  'too-quiet': 'too quiet',
  'too-noisy': 'too noisy',
  'too-short': 'too short',
  'wrong-note': 'another note was played',
  'two-notes': 'two notes at once',
  speech: 'speech in it',
  knock: 'a knock in it',
  'hole-in-recording': 'a hole in the recording',
  'no-onset': 'strike not seen',
  'fit-failed': 'could not be fitted',
};

const of =
  (text: (reading: ReadingDocument) => string) =>
  ({ reading }: ReadingRow) =>
    reading ? text(reading) : '';

const READING_COLUMNS: readonly Column<ReadingRow>[] = [
  { title: 'file', align: 'left', text: ({ file }) => file },
  { title: 'at', align: 'right', text: of(({ onsetS }) => formatSeconds(onsetS)) },
  { title: 'note', align: 'left', text: of(({ midi }) => formatNote(midi)) },
  { title: 'string', align: 'left', text: of(({ string }) => (string === 0 ? '' : String(string))) },
  { title: 'partial 1', align: 'right', text: of(({ partial1Hz, partial1HzU }) => formatHz(partial1Hz, partial1HzU)) },
  { title: 'cents', align: 'right', text: of(({ cents, centsU }) => formatCentsValue(cents, centsU)) },
  { title: '', align: 'left', text: of(({ centsU }) => formatCentsUncertainty(centsU)) },
  { title: 'B', align: 'left', text: of(({ inharmonicityB }) => formatInharmonicity(inharmonicityB)) },
  { title: 'beating', align: 'left', text: of(beatingText) },
  { title: 'quality', align: 'left', text: of(qualityText) },
  { title: '', align: 'left', text: ({ remark }) => remark },
];

const PARTIAL_COLUMNS: readonly Column<PartialDocument>[] = [
  { title: 'partial', align: 'right', text: ({ n }) => String(n) },
  { title: 'frequency', align: 'right', text: ({ hz, hzU }) => formatHz(hz, hzU) },
  { title: 'level', align: 'right', text: ({ levelDb }) => formatLevel(levelDb) },
  { title: '60 dB in', align: 'right', text: ({ promptDecayS }) => formatSeconds(promptDecayS) },
  { title: 'aftersound', align: 'right', text: ({ afterDecayS }) => formatSeconds(afterDecayS) },
  { title: 'beats', align: 'left', text: ({ beats }) => beats.map((beat) => formatBeatRate(beat.rateHz)).join(', ') },
];

function beatingText({ beating }: ReadingDocument): string {
  if (beating.rateHz === null) return beating.kind;
  return `${beating.kind}, ${formatBeatRate(beating.rateHz)}`;
}

function qualityText({ quality }: ReadingDocument): string {
  const faults = quality.reasons.map((reason) => FAULT_WORDS[reason]).join(', ');
  return `${quality.usable ? 'usable' : 'not usable'}${faults === '' ? '' : `: ${faults}`}`;
}
