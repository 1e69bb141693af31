/** How the instrument moved: its course, its answer to humidity, and every comparison string by string. */
import { formatCentsValue, formatDate, formatYears, NOT_MEASURED } from '../piano/format.ts';
import { formatHumidityChange } from '../piano/formatStability.ts';
import type { StringChange } from '../stability/drift/driftDetail.ts';
import type { FullRecords } from './fullRecords.ts';
import { noteChartSvg } from './noteChartSvg.ts';
import { courseSection } from './ownersCourse.ts';
import { courseTree } from './ownersPageHtml.ts';
import { workSection } from './ownersWork.ts';
import { element, type PageElement } from './pageTree.ts';
import { type ReportColumn, scrollingTable } from './reportTable.ts';
import { stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

export function courseOfRecord(records: FullRecords, words: ReportWords): PageElement {
  return courseTree(courseSection(records, words), workSection(records, words), words);
}

export function responseSection({ drift, instrument }: FullRecords, words: ReportWords): PageElement | null {
  const { strings, isHumidityKnown } = drift.detail;
  if (!isHumidityKnown || strings.length === 0) return null;
  const charted = strings.map(({ midi, stringPosition, centsPerPct, standardUncertainty }) => ({
    midi,
    stringPosition,
    value: centsPerPct,
    standardUncertainty,
  }));
  const chart = noteChartSvg({ title: words.long.responseChart, strings: charted, row: instrument });
  return element('section', {}, element('h2', {}, words.long.response), element('figure', {}, chart));
}

type Comparison = { readonly index: number; readonly label: string; readonly changes: readonly StringChange[] };

export function comparisonSection(records: FullRecords, words: ReportWords): PageElement | null {
  const comparisons = comparisonsOf(records, words);
  if (comparisons.length === 0) return null;
  const charts = comparisons.map((comparison) => element('figure', {}, comparisonChart(comparison, records, words)));
  return element(
    'section',
    {},
    element('h2', {}, words.long.comparisons),
    element('p', { class: 'explained' }, words.long.comparisonNote),
    charts,
    chunks(comparisons, COLUMNS).map((some) => changeTable(some, records, words)),
  );
}

function comparisonsOf({ drift }: FullRecords, words: ReportWords): Comparison[] {
  return drift.intervals.flatMap(({ fromDate, toDate, years, humidityChangePct }, index) => {
    const changes = drift.detail.changes.filter((change) => change.intervalIndex === index);
    if (changes.length === 0) return [];
    const [from, to] = [formatDate(fromDate, words.language), formatDate(toDate, words.language)];
    const humidity = humidityChangePct === null ? '' : `, ${formatHumidityChange(humidityChangePct)}`;
    return [{ index, label: `${words.long.fromTo(from, to)} (${formatYears(years)}${humidity})`, changes }];
  });
}

function comparisonChart(
  { label, changes }: Comparison,
  { drift, instrument }: FullRecords,
  words: ReportWords,
): PageElement {
  const strings = changes.flatMap(({ stringIndex, cents, readingUncertaintyCents }) => {
    const string = drift.detail.strings[stringIndex];
    return string ? [{ ...string, value: cents, standardUncertainty: readingUncertaintyCents }] : [];
  });
  const course = changes.flatMap(({ stringIndex, wholeCents }) => {
    const string = drift.detail.strings[stringIndex];
    return string ? [{ midi: string.midi, value: wholeCents }] : [];
  });
  return noteChartSvg({ title: `${label}, ${words.course.cents}`, strings, course, row: instrument });
}

/** So many comparisons stand side by side on a page. */
const COLUMNS = 8;

function changeTable(comparisons: readonly Comparison[], { drift }: FullRecords, words: ReportWords): PageElement {
  const rows = drift.detail.strings.map((string, stringIndex) => ({ string, stringIndex }));
  type Row = (typeof rows)[number];
  const columns = comparisons.map(({ index, changes }): ReportColumn<Row> => {
    const byString = new Map(changes.map((change) => [change.stringIndex, change]));
    return {
      title: drift.intervals[index]?.toDate ?? '',
      isNumber: true,
      cell: ({ stringIndex }) => {
        const change = byString.get(stringIndex);
        return change ? formatCentsValue(change.cents) : NOT_MEASURED;
      },
    };
  });
  const name: ReportColumn<Row> = {
    title: words.long.string,
    isRowHeader: true,
    cell: ({ string }) => stringName(string, words),
  };
  return scrollingTable(words.long.changeTable, [name, ...columns], rows);
}

function chunks<Item>(items: readonly Item[], size: number): Item[][] {
  const count = Math.ceil(items.length / size);
  return Array.from({ length: count }, (_, index) => items.slice(index * size, (index + 1) * size));
}
