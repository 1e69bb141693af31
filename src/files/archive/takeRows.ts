/** A take as rows of the five tables that hold what was measured. */
import type { EarlierReading, Take } from '../../piano/instrument.ts';
import type { NoteReading, PartialReading } from '../../piano/reading.ts';

export function readingRow(take: Take): object {
  const { earlierReadings: _, reading, ...rest } = take;
  return { ...rest, reading: readingFields(reading) };
}

export function* earlierRows({ id, earlierReadings = [] }: Take): Generator<object> {
  for (const [index, earlier] of earlierReadings.entries())
    yield { ...earlier, readingId: id, earlierNumber: index + 1, reading: readingFields(earlier.reading) };
}

/** Partials whose numbers do not tell them apart stay with their reading, in its `further`. */
function readingFields(reading: NoteReading): object {
  if (!areNumbered(reading.partials)) return reading;
  const { partials: _, ...fields } = reading;
  return fields;
}

function areNumbered(partials: readonly PartialReading[]): boolean {
  if (partials.every((partial, index) => isCount(partial) && isAfter(partial, partials[index - 1]))) return true;
  return (
    new Set(partials.map(({ partialNumber }) => partialNumber)).size === partials.length && partials.every(isCount)
  );
}

function isAfter({ partialNumber }: PartialReading, before: PartialReading | undefined): boolean {
  return before === undefined || partialNumber > before.partialNumber;
}

function isCount({ partialNumber }: PartialReading): boolean {
  return Number.isSafeInteger(partialNumber) && partialNumber >= 1;
}

type OfReading = { readonly readingId: string; readonly earlierNumber: number };

function* readingsOf(take: Take): Generator<[OfReading, readonly PartialReading[]]> {
  const all: readonly (Take | EarlierReading)[] = [take, ...(take.earlierReadings ?? [])];
  for (const [earlierNumber, { reading }] of all.entries())
    if (areNumbered(reading.partials)) yield [{ readingId: take.id, earlierNumber }, reading.partials];
}

export function* partialRows(take: Take): Generator<object> {
  for (const [of, partials] of readingsOf(take)) for (const partial of partials) yield { of, partial };
}

export function* beatRows(take: Take): Generator<object> {
  yield* lineRows(take, 'beats');
}

export function* componentRows(take: Take): Generator<object> {
  yield* lineRows(take, 'components');
}

function* lineRows(take: Take, field: 'beats' | 'components'): Generator<object> {
  for (const [{ readingId, earlierNumber }, partials] of readingsOf(take))
    for (const partial of partials) {
      if (partial[field].length === 0) continue;
      const of = { readingId, earlierNumber, partialNumber: partial.partialNumber };
      for (const line of partial[field]) yield { of, line };
    }
}
