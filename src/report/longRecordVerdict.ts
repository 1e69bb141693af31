/** The verdict with its reasons, and what each string's pin did. */
import { formatCents, formatNote, formatNoteRange } from '../piano/format.ts';
import { formatCentsSize } from '../piano/formatPlain.ts';
import { formatProbability, formatRateValue } from '../piano/formatStability.ts';
import type { JudgedPin } from '../stability/drift/judgedPin.ts';
import type { OutlierReason } from '../stability/drift/outlierReason.ts';
import type { Outlier } from '../stability/drift/outliers.ts';
import type { Zone } from '../stability/drift/zoneScan.ts';
import type { FullRecords } from './fullRecords.ts';
import { noteChartSvg } from './noteChartSvg.ts';
import { verdictSection } from './ownersVerdict.ts';
import { element, type PageElement } from './pageTree.ts';
import { type ReportColumn, scrollingTable } from './reportTable.ts';
import { stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

export function verdictRecord(records: FullRecords, words: ReportWords): PageElement {
  const { title, state, headline, sentences, newWire } = verdictSection(records, words);
  const { zones, outliers } = records.drift;
  return element(
    'section',
    {},
    element(
      'div',
      { class: 'verdict', 'data-state': state },
      element('h2', {}, title),
      element('p', { class: 'headline' }, headline),
      sentences.map((sentence) => element('p', {}, sentence)),
      newWire.length > 0 && element('p', {}, newWire.join(' ')),
    ),
    zones.length > 0 && scrollingTable(words.long.zones, zoneColumns(words), zones),
    outliers.length > 0 && scrollingTable(words.long.outliers, outlierColumns(words), outliers),
  );
}

function zoneColumns({ long }: ReportWords): ReportColumn<Zone>[] {
  return [
    { title: long.notes, isRowHeader: true, cell: ({ fromMidi, toMidi }) => formatNoteRange(fromMidi, toMidi) },
    { title: long.slip, isNumber: true, cell: (zone) => formatRateValue(zone.centsPerYear, zone.standardUncertainty) },
    { title: long.probability, isNumber: true, cell: ({ probability }) => formatProbability(probability) },
    { title: long.course, cell: ({ isAccelerating }) => (isAccelerating ? long.faster : long.steady) },
  ];
}

function outlierColumns(words: ReportWords): ReportColumn<Outlier>[] {
  const { long } = words;
  return [
    { title: long.date, isRowHeader: true, cell: ({ visitedOn }) => visitedOn },
    { title: long.string, cell: (outlier) => stringName(outlier, words) },
    { title: long.departure, isNumber: true, cell: ({ cents }) => formatCents(cents) },
    { title: long.reason, cell: ({ because }) => becauseWords(because, words) },
  ];
}

function becauseWords(because: OutlierReason, { long }: ReportWords): string {
  const cents = formatCentsSize(because.offCents);
  switch (because.kind) {
    case 'stood-off-once':
      return long.because['stood-off-once'](cents);
    case 'found-off-once':
      return long.because['found-off-once'][because.direction](cents);
    case 'left-off':
      return long.because['left-off'](cents);
  }
}

export function slipSection({ drift, instrument }: FullRecords, words: ReportWords): PageElement | null {
  const judged = drift.pins.filter(({ slip }) => slip.centsPerYear !== null);
  if (judged.length === 0) return null;
  const strings = judged.map(({ midi, stringPosition, slip, isFlagged }) => ({
    midi,
    stringPosition,
    value: slip.centsPerYear ?? 0,
    standardUncertainty: slip.standardUncertainty ?? 0,
    isMarked: isFlagged,
  }));
  const chart = noteChartSvg({ title: words.long.slipChart, strings, row: instrument });
  return element(
    'section',
    {},
    element('h2', {}, words.long.slips),
    element('figure', {}, chart),
    scrollingTable(words.long.slipTable, pinColumns(words), judged),
  );
}

function pinColumns(words: ReportWords): ReportColumn<JudgedPin>[] {
  const { long } = words;
  return [
    { title: long.note, isRowHeader: true, cell: ({ midi }) => formatNote(midi) },
    { title: long.string, cell: ({ stringPosition }) => words.string[stringPosition] || long.unison },
    {
      title: long.slip,
      isNumber: true,
      cell: ({ slip }) => formatRateValue(slip.centsPerYear, slip.standardUncertainty),
    },
    { title: long.probability, isNumber: true, cell: ({ slip }) => formatProbability(slip.probability) },
    { title: long.judgement, cell: ({ isFlagged }) => (isFlagged ? long.flagged : '') },
  ];
}
