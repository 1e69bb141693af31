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
export const BEAT_COUNT_COLUMN = 7;
export const COMPONENT_COUNT_COLUMN = 8;

export function packPartials(partials: readonly PartialReading[]): PackedPartials {
  return {
    partials: Float64Array.from(partials.flatMap(partialColumns)),
    beats: Float64Array.from(partials.flatMap((partial) => partial.beats.flatMap(beatColumns))),
    components: Float64Array.from(partials.flatMap((partial) => partial.components.flatMap(componentColumns))),
  };
}

export function unpackPartials(packed: PackedPartials): PartialReading[] {
  let beatRow = 0;
  let componentRow = 0;
  return rowsOf(packed.partials, PARTIAL_COLUMNS).map((row) => {
    const beatCount = row[BEAT_COUNT_COLUMN] ?? 0;
    const componentCount = row[COMPONENT_COUNT_COLUMN] ?? 0;
    const beats = rowsOf(packed.beats, BEAT_COLUMNS, beatRow, beatCount).map(toBeat);
    const components = rowsOf(packed.components, COMPONENT_COLUMNS, componentRow, componentCount).map(toComponent);
    beatRow += beatCount;
    componentRow += componentCount;
    return toPartial(row, beats, components);
  });
}

function partialColumns(partial: PartialReading): number[] {
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

function beatColumns(beat: Beat): number[] {
  return [beat.rateHz, beat.rateStandardUncertaintyHz, beat.depthDb];
}

function componentColumns(component: PartialComponent): number[] {
  return [component.frequencyHz, component.frequencyStandardUncertaintyHz, component.levelDbfs, component.decayTimeS];
}

type Row = Float64Array;

function rowsOf(table: Float64Array, columnCount: number, firstRow = 0, rowCount = table.length / columnCount): Row[] {
  return Array.from({ length: rowCount }, (_, index) => {
    const start = (firstRow + index) * columnCount;
    return table.subarray(start, start + columnCount);
  });
}

/** A table's row always has all its columns: `packingFault` has checked the lengths of what came from the database. */
function column(row: Row, index: number): number {
  const value = row[index];
  if (value === undefined) throw new RangeError(`packed row has ${row.length} columns, column ${index} was asked for`);
  return value;
}

function columnOrNull(row: Row, index: number): number | null {
  const value = column(row, index);
  return Number.isNaN(value) ? null : value;
}

function toPartial(row: Row, beats: Beat[], components: PartialComponent[]): PartialReading {
  return {
    partialNumber: column(row, 0),
    frequencyHz: column(row, 1),
    frequencyStandardUncertaintyHz: column(row, 2),
    levelDbfs: column(row, 3),
    snrDb: column(row, 4),
    promptDecayTimeS: columnOrNull(row, 5),
    afterDecayTimeS: columnOrNull(row, 6),
    beats,
    components,
  };
}

function toBeat(row: Row): Beat {
  return { rateHz: column(row, 0), rateStandardUncertaintyHz: column(row, 1), depthDb: column(row, 2) };
}

function toComponent(row: Row): PartialComponent {
  return {
    frequencyHz: column(row, 0),
    frequencyStandardUncertaintyHz: column(row, 1),
    levelDbfs: column(row, 2),
    decayTimeS: column(row, 3),
  };
}

/** What is wrong with packed tables, in words; undefined where they are sound. */
export function packingFault(packed: PackedPartials): string | undefined {
  const { partials, beats, components } = packed;
  if (partials.length % PARTIAL_COLUMNS !== 0) return `partials has ${partials.length} numbers, not whole rows`;
  const beatCount = countIn(partials, BEAT_COUNT_COLUMN);
  const componentCount = countIn(partials, COMPONENT_COUNT_COLUMN);
  if (beatCount === undefined || componentCount === undefined) return 'a count of beats or components is not a count';
  if (beats.length !== beatCount * BEAT_COLUMNS) return `beats has ${beats.length} numbers for ${beatCount} beats`;
  if (components.length !== componentCount * COMPONENT_COLUMNS)
    return `components has ${components.length} numbers for ${componentCount} components`;
  if (partials.some((value, index) => Number.isNaN(value) && ![5, 6].includes(index % PARTIAL_COLUMNS)))
    return 'a partial holds a figure that is not a number';
  if (beats.some(Number.isNaN)) return 'a beat holds a figure that is not a number';
  if (components.some(Number.isNaN)) return 'a component holds a figure that is not a number';
  return undefined;
}

function countIn(partials: Float64Array, columnIndex: number): number | undefined {
  const counts = partials.filter((_, index) => index % PARTIAL_COLUMNS === columnIndex);
  if (!counts.every((count) => Number.isInteger(count) && count >= 0)) return undefined;
  return counts.reduce((sum, count) => sum + count, 0);
}
