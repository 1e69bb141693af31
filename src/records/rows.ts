/** What the database's tables hold. Four tables hold the plain data of piano/instrument.ts as it is; takes are packed. */
import type { Take } from '../piano/instrument.ts';
import type { NoteReading } from '../piano/reading.ts';
import { type PackedPartials, packPartials, unpackPartials } from './packPartials.ts';

export type TakeRow = Omit<Take, 'isKept' | 'reading'> & {
  /** 1 for the kept take of its note and string, else 0: a database index cannot hold true and false. */
  readonly keptFlag: 0 | 1;
  readonly reading: Omit<NoteReading, 'partials'>;
  readonly partials: PackedPartials;
};

export function takeToRow(take: Take): TakeRow {
  const { isKept, reading, ...rest } = take;
  const { partials, ...scalars } = reading;
  return { ...rest, keptFlag: isKept ? 1 : 0, reading: scalars, partials: packPartials(partials) };
}

export function rowToTake(row: TakeRow): Take {
  const { keptFlag, reading, partials, ...rest } = row;
  return { ...rest, isKept: keptFlag === 1, reading: { ...reading, partials: unpackPartials(partials) } };
}
