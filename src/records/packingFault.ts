/** Whether packed tables fit together, before anyone unpacks them. */
import {
  AFTER_DECAY_COLUMN,
  BEAT_COLUMNS,
  BEAT_COUNT_COLUMN,
  COMPONENT_COLUMNS,
  COMPONENT_COUNT_COLUMN,
  PARTIAL_COLUMNS,
  type PackedPartials,
  PROMPT_DECAY_COLUMN,
} from './packPartials.ts';

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
  if (hasBadPartial(partials)) return 'a partial holds a figure that is not a number';
  if (hasNaN(beats)) return 'a beat holds a figure that is not a number';
  if (hasNaN(components)) return 'a component holds a figure that is not a number';
  return undefined;
}

function countIn(partials: Float64Array, columnIndex: number): number | undefined {
  let sum = 0;
  for (let index = columnIndex; index < partials.length; index += PARTIAL_COLUMNS) {
    const count = partials[index] ?? Number.NaN;
    if (!Number.isInteger(count) || count < 0) return undefined;
    sum += count;
  }
  return sum;
}

/** The two decay times may be NaN, which stands for "not measured" there. */
function hasBadPartial(partials: Float64Array): boolean {
  for (let index = 0; index < partials.length; index++) {
    if (!Number.isNaN(partials[index])) continue;
    const column = index % PARTIAL_COLUMNS;
    if (column !== PROMPT_DECAY_COLUMN && column !== AFTER_DECAY_COLUMN) return true;
  }
  return false;
}

function hasNaN(table: Float64Array): boolean {
  for (const value of table) if (Number.isNaN(value)) return true;
  return false;
}
