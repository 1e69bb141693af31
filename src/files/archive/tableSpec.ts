/** How a table of the archive is described once, for writing it, reading it, checking it and explaining it. */

export type ColumnType = 'text' | 'number' | 'integer' | 'boolean' | 'date' | 'time' | 'list' | 'object';

/** What an empty cell stands for. `refused`: there has to be a value. */
export type EmptyCell = 'refused' | 'null' | 'absent' | 'empty text';

export type Column = {
  /** In the header of the CSV file, with its unit. */
  readonly name: string;
  /** Where the value lies in a row. Empty for a column that repeats another in a form for people. */
  readonly path: readonly string[];
  readonly type: ColumnType;
  readonly empty: EmptyCell;
  readonly description: string;
  readonly oneOf?: readonly (string | number)[];
  readonly minimum?: number;
  readonly maximum?: number;
  /** The column of MIDI numbers whose note name this column repeats. */
  readonly noteNameOf?: string;
};

export type ForeignKey = {
  readonly columns: readonly string[];
  readonly table: string;
  readonly key: readonly string[];
};

export type TableSpec = {
  /** Of the resource; its file is `<name>.csv`. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly columns: readonly Column[];
  readonly key: readonly string[];
  readonly foreignKeys: readonly ForeignKey[];
  /** Objects within a row that may be missing as a whole, with what an object without any value stands for. */
  readonly optionalGroups: Readonly<Record<string, 'null' | 'absent'>>;
  /** Fields that have a table of their own, by the object they are in ('' for the row itself). */
  readonly apart?: Readonly<Record<string, readonly string[]>>;
  /**
   * The quick way to a row, for tables of very many: from the values of all columns, in their order. Taken where every value is there
   * that has to be, and `further` is empty.
   */
  readonly quickRow?: (values: readonly unknown[]) => Readonly<Record<string, unknown>>;
};

type ColumnExtras = Pick<Column, 'oneOf' | 'minimum' | 'maximum'>;

function column(type: ColumnType, empty: EmptyCell) {
  return (name: string, path: string, description: string, extras: ColumnExtras = {}): Column => ({
    name,
    path: path.split('.'),
    type,
    empty,
    description,
    ...extras,
  });
}

/** Has to be there. */
export const required = {
  text: column('text', 'refused'),
  number: column('number', 'refused'),
  integer: column('integer', 'refused'),
  boolean: column('boolean', 'refused'),
  date: column('date', 'refused'),
  time: column('time', 'refused'),
  list: column('list', 'refused'),
  object: column('object', 'refused'),
};

/** Text that may be empty. */
export const text = column('text', 'empty text');

/** Empty where it is not known. */
export const orNull = {
  text: column('text', 'null'),
  number: column('number', 'null'),
  integer: column('integer', 'null'),
  date: column('date', 'null'),
  time: column('time', 'null'),
  list: column('list', 'null'),
};

/** Empty where nobody said, or where the row comes from a program that did not know it. */
export const orAbsent = {
  text: column('text', 'absent'),
  number: column('number', 'absent'),
  integer: column('integer', 'absent'),
  time: column('time', 'absent'),
  object: column('object', 'absent'),
};

const MIDI = { minimum: 0, maximum: 127 };

/** A MIDI number and, beside it, the note's name for people. */
export function noteColumns(name: string, path: string, description: string, isKnown = true): Column[] {
  const midiName = `${name}midi`;
  const make = isKnown ? required.integer : orNull.integer;
  return [
    make(midiName, path, `${description}, as MIDI number (A4 is 69)`, MIDI),
    {
      name: `${name}note`,
      path: [],
      type: 'text',
      empty: 'null',
      description: `The name of the note in ${midiName}, sharps only; repeated for people, ${midiName} is what counts`,
      noteNameOf: midiName,
    },
  ];
}

export function stringColumn(path: string): Column {
  return required.integer('string_position', path, STRING_POSITION, { oneOf: [0, 1, 2, 3] });
}

export const STRING_POSITION =
  'Which string of the note: 1, 2, 3 from left to right seen from the keyboard; 0 where the whole unison sounds or nobody said';

/** The last columns of every table whose rows are edited. */
export const editColumns: readonly Column[] = [
  orAbsent.object('stamp', 'stamp', 'How often each device has edited this row (a version vector), for merging'),
  orAbsent.time('deleted_at', 'deletedAt', 'When this row was put in the bin; empty for a row in use'),
  orAbsent.text('deletion_id', 'deletionId', 'The same for all rows that one deletion took'),
];

export const furtherColumn: Column = {
  name: 'further',
  path: [],
  type: 'object',
  empty: 'absent',
  description:
    'Fields of the row that have no column of their own, as JSON; README.txt says how numbers and bytes are written in it',
};

/** An id column that names a row of another table. */
export function reference(columnName: string, table: string, key = 'id'): ForeignKey {
  return { columns: [columnName], table, key: [key] };
}
