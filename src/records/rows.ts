/** What the database's tables hold. Four tables hold the plain data of piano/instrument.ts as it is; takes are packed, sounds have their size beside them. */
import type { ArchivedGone, ArchivedRival } from '../files/archive/archiveContents.ts';
import type { Measured, Take, TakeSound } from '../piano/instrument.ts';
import type { NoteReading } from '../piano/reading.ts';
import { type PackedPartials, packPartials, unpackPartials } from './packPartials.ts';

export type TakeRow = Omit<Take, 'isKept' | 'reading' | 'earlierReadings'> & {
  /** 1 for the kept take of its note and string, else 0: a database index cannot hold true and false. */
  readonly keptFlag: 0 | 1;
  readonly reading: Omit<NoteReading, 'partials'>;
  readonly partials: PackedPartials;
  readonly earlierReadings?: readonly EarlierReadingRow[];
};

export type EarlierReadingRow = {
  readonly reading: Omit<NoteReading, 'partials'>;
  readonly partials: PackedPartials;
  readonly measured: Measured | null;
};

/** With its size beside it, so that a sum of sizes need not read the sounds. */
export type SoundRow = TakeSound & { readonly byteCount: number };

/** A row that was edited on two devices apart from the one in its table, as that table would hold it: both are kept until somebody chooses. */
export type RivalRow = ArchivedRival;

/** What is left of a row that was deleted for good, so that an old archive does not bring it back. */
export type GoneRow = ArchivedGone;

export type SettingRow = { readonly key: string; readonly value: unknown };

export function takeToRow(take: Take): TakeRow {
  const { isKept, reading, earlierReadings, ...rest } = take;
  return {
    ...rest,
    keptFlag: isKept ? 1 : 0,
    ...packed(reading),
    ...(earlierReadings && {
      earlierReadings: earlierReadings.map((earlier) => ({ ...packed(earlier.reading), measured: earlier.measured })),
    }),
  };
}

export function rowToTake(row: TakeRow): Take {
  const { keptFlag, reading, partials, earlierReadings, ...rest } = row;
  return {
    ...rest,
    isKept: keptFlag === 1,
    reading: unpacked({ reading, partials }),
    ...(earlierReadings && {
      earlierReadings: earlierReadings.map((earlier) => ({ reading: unpacked(earlier), measured: earlier.measured })),
    }),
  };
}

export function soundToRow(sound: TakeSound): SoundRow {
  return { ...sound, byteCount: sound.bytes.length };
}

export function rowToSound({ byteCount: _, ...sound }: SoundRow): TakeSound {
  return sound;
}

type Packed = Pick<TakeRow, 'reading' | 'partials'>;

function packed({ partials, ...scalars }: NoteReading): Packed {
  return { reading: scalars, partials: packPartials(partials) };
}

function unpacked({ reading, partials }: Packed): NoteReading {
  return { ...reading, partials: unpackPartials(partials) };
}
