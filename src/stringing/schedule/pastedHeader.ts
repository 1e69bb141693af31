/** A line that names columns: the names of our own files, and the plain words that people write above such columns. */
import { numberIn, SCHEDULE_COLUMNS, SCHEDULE_FIELDS, type ScheduleField } from '../../piano/wireScheduleCell.ts';

export type PastedColumn =
  | { readonly kind: 'note' }
  | { readonly kind: 'field'; readonly field: ScheduleField }
  | { readonly kind: 'unknown'; readonly name: string };

const PLAIN_WORDS: Readonly<Record<ScheduleField, readonly string[]>> = {
  stringCount: ['stringcount', 'numberofstrings'],
  speakingLengthMm: ['speakinglength', 'length', 'lengthmm'],
  wireDiameterMm: ['wirediameter', 'diameter', 'diametermm', 'wire', 'overalldiameter', 'overalldiametermm'],
  coreDiameterMm: ['corediameter', 'core', 'coremm'],
  wrap: ['wrapmetal', 'wrapping'],
  wireGrade: ['grade'],
  bridge: [],
};

const FIELD_BY_WORD: ReadonlyMap<string, ScheduleField> = new Map(
  SCHEDULE_FIELDS.flatMap((field) =>
    [plainLetters(SCHEDULE_COLUMNS[field]), ...PLAIN_WORDS[field]].map((word) => [word, field] as const),
  ),
);

/** Undefined where the line is no header: where no cell names a column, or one is a number. */
export function headerColumns(cells: readonly string[]): PastedColumn[] | undefined {
  if (cells.some((cell) => numberIn(cell) !== undefined)) return undefined;
  const columns = cells.map(columnNamed);
  return columns.some(({ kind }) => kind !== 'unknown') ? columns : undefined;
}

function columnNamed(name: string): PastedColumn {
  const word = plainLetters(name);
  if (word === 'note') return { kind: 'note' };
  const field = FIELD_BY_WORD.get(word);
  return field ? { kind: 'field', field } : { kind: 'unknown', name };
}

function plainLetters(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}]/gu, '');
}
