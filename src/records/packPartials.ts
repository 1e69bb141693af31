/**
 * The partials of one reading as three tables of 64-bit numbers: a stored take is then a handful of scalars and three
 * buffers instead of hundreds of small objects, which makes writing and reading a history many times faster.
 * Nothing is rounded: unpacking gives back exactly the numbers that were packed.
 */
import type { Beat, PartialComponent, PartialReading } from '../piano/reading.ts';

/** Row-major tables; `beats` and `components` follow the partials' order, as many rows as each partial counts. */
export type PackedPartials = {
  /** Nine columns: number, Hz, its uncertainty, dBFS, SNR dB, prompt and after decay s (NaN: not measured), two counts. */
  readonly partials: Float64Array;
  /** Three columns: rate Hz, its uncertainty, depth dB. */
  readonly beats: Float64Array;
  /** Four columns: Hz, its uncertainty, dBFS, decay s. */
  readonly components: Float64Array;
};

export const PARTIAL_COLUMNS = 9;
export const BEAT_COLUMNS = 3;
export const COMPONENT_COLUMNS = 4;
export const PROMPT_DECAY_COLUMN = 5;
export const AFTER_DECAY_COLUMN = 6;
export const BEAT_COUNT_COLUMN = 7;
export const COMPONENT_COUNT_COLUMN = 8;

export function packPartials(partials: readonly PartialReading[]): PackedPartials {
  return {
    partials: tableOf(partials, PARTIAL_COLUMNS, partialColumns),
    beats: tableOf(allOf(partials, 'beats'), BEAT_COLUMNS, beatColumns),
    components: tableOf(allOf(partials, 'components'), COMPONENT_COLUMNS, componentColumns),
  };
}

function allOf<Key extends 'beats' | 'components'>(
  partials: readonly PartialReading[],
  key: Key,
): PartialReading[Key][number][] {
  const all: PartialReading[Key][number][] = [];
  for (const partial of partials) for (const item of partial[key]) all.push(item);
  return all;
}

function tableOf<Item>(
  items: readonly Item[],
  columnCount: number,
  columnsOf: (item: Item) => readonly number[],
): Float64Array {
  const table = new Float64Array(items.length * columnCount);
  items.forEach((item, row) => {
    table.set(columnsOf(item), row * columnCount);
  });
  return table;
}

function partialColumns(partial: PartialReading): readonly number[] {
  return [
    partial.partialNumber,
    partial.frequencyHz,
    partial.frequencyStandardUncertaintyHz,
    partial.levelDbfs,
    partial.snrDb,
    partial.promptDecayTimeS ?? Number.NaN,
    partial.afterDecayTimeS ?? Number.NaN,
    partial.beats.length,
    partial.components.length,
  ];
}

function beatColumns(beat: Beat): readonly number[] {
  return [beat.rateHz, beat.rateStandardUncertaintyHz, beat.depthDb];
}

function componentColumns(component: PartialComponent): readonly number[] {
  return [component.frequencyHz, component.frequencyStandardUncertaintyHz, component.levelDbfs, component.decayTimeS];
}

/** @throws {RangeError} where a table is shorter than its counts say; `packingFault` tells beforehand */
export function unpackPartials(packed: PackedPartials): PartialReading[] {
  const { partials } = packed;
  const unpacked: PartialReading[] = [];
  let [beatRow, componentRow] = [0, 0];
  for (let start = 0; start < partials.length; start += PARTIAL_COLUMNS) {
    const [beatStart, componentStart] = [beatRow, componentRow];
    beatRow += numberAt(partials, start + BEAT_COUNT_COLUMN);
    componentRow += numberAt(partials, start + COMPONENT_COUNT_COLUMN);
    unpacked.push({
      partialNumber: numberAt(partials, start),
      frequencyHz: numberAt(partials, start + 1),
      frequencyStandardUncertaintyHz: numberAt(partials, start + 2),
      levelDbfs: numberAt(partials, start + 3),
      snrDb: numberAt(partials, start + 4),
      promptDecayTimeS: numberOrNullAt(partials, start + PROMPT_DECAY_COLUMN),
      afterDecayTimeS: numberOrNullAt(partials, start + AFTER_DECAY_COLUMN),
      beats: beatsFrom(packed.beats, beatStart, beatRow),
      components: componentsFrom(packed.components, componentStart, componentRow),
    });
  }
  return unpacked;
}

function beatsFrom(table: Float64Array, firstRow: number, endRow: number): Beat[] {
  const beats: Beat[] = [];
  for (let start = firstRow * BEAT_COLUMNS; start < endRow * BEAT_COLUMNS; start += BEAT_COLUMNS)
    beats.push({
      rateHz: numberAt(table, start),
      rateStandardUncertaintyHz: numberAt(table, start + 1),
      depthDb: numberAt(table, start + 2),
    });
  return beats;
}

function componentsFrom(table: Float64Array, firstRow: number, endRow: number): PartialComponent[] {
  const components: PartialComponent[] = [];
  for (let start = firstRow * COMPONENT_COLUMNS; start < endRow * COMPONENT_COLUMNS; start += COMPONENT_COLUMNS)
    components.push({
      frequencyHz: numberAt(table, start),
      frequencyStandardUncertaintyHz: numberAt(table, start + 1),
      levelDbfs: numberAt(table, start + 2),
      decayTimeS: numberAt(table, start + 3),
    });
  return components;
}

function numberAt(table: Float64Array, index: number): number {
  const value = table[index];
  if (value === undefined) throw new RangeError(`a packed table of ${table.length} numbers was read at ${index}`);
  return value;
}

function numberOrNullAt(table: Float64Array, index: number): number | null {
  const value = numberAt(table, index);
  return Number.isNaN(value) ? null : value;
}
