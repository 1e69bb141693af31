/** Rows of a table from the cells of a CSV file: what rowEncoder.ts wrote, checked cell by cell. */
import { nameToMidi } from '../../piano/note.ts';
import { type CellReader, cellReader, shortened, UnreadableCell } from './cellValues.ts';
import { quickReader } from './quickReader.ts';
import { headerOf, type NoteName } from './rowEncoder.ts';
import { type Column, furtherColumn, type TableSpec } from './tableSpec.ts';
import { ABSENT, isPlainObject, type PlainObject, readTaggedJson } from './taggedJson.ts';

/** Told of a cell that is wrong; `column` is null where the row as a whole is. */
export type CellFault = (column: string | null, message: string) => void;

export type RowDecoder = {
  /** Undefined where a fault was told. */
  row(cells: readonly string[], onFault: CellFault): PlainObject | undefined;
};

export type DecoderOutcome =
  | { readonly ok: true; readonly decoder: RowDecoder }
  | { readonly ok: false; readonly column: string | null; readonly message: string };

type Slot = { readonly column: Column; readonly key: string; readonly group: number; readonly read: CellReader };
type Group = { readonly key: string; readonly parent: number; readonly whenEmpty: 'null' | 'absent' | undefined };
type Plan = {
  readonly slots: readonly (Slot | undefined)[];
  readonly missing: readonly Slot[];
  readonly groups: readonly Group[];
  readonly names: readonly NoteName[];
  readonly furtherIndex: number;
};

/** For a file with this header. Columns may stand in any order; those that need not have a value may be missing. */
export function createRowDecoder(spec: TableSpec, header: readonly string[]): DecoderOutcome {
  const fault = headerFault(spec, header);
  if (fault) return { ok: false, ...fault };
  const decoder = createDecoder(planOf(spec, header));
  const quick = quickReader(spec, header);
  if (quick === undefined) return { ok: true, decoder };
  return { ok: true, decoder: { row: (cells, onFault) => quick(cells) ?? decoder.row(cells, onFault) } };
}

function headerFault(spec: TableSpec, header: readonly string[]) {
  const known = headerOf(spec);
  const double = header.find((name, index) => header.indexOf(name) !== index);
  if (double !== undefined) return { column: double, message: 'stands in the header twice; leave one of them' };
  const unknown = header.find((name) => !known.includes(name));
  if (unknown !== undefined)
    return {
      column: shortened(unknown),
      message: 'is not a column of this table; take it out, or read the archive with a newer program',
    };
  const missing = spec.columns.find((column) => column.empty === 'refused' && !header.includes(column.name));
  return missing && { column: missing.name, message: 'is missing in the header' };
}

function planOf(spec: TableSpec, header: readonly string[]): Plan {
  const groups: Group[] = [{ key: '', parent: -1, whenEmpty: undefined }];
  const groupAt = new Map([['', 0]]);
  const groupOf = (path: readonly string[]): number => {
    const name = path.join('.');
    const found = groupAt.get(name);
    if (found !== undefined) return found;
    const parent = groupOf(path.slice(0, -1));
    groups.push({ key: path.at(-1) ?? '', parent, whenEmpty: spec.optionalGroups[name] });
    groupAt.set(name, groups.length - 1);
    return groups.length - 1;
  };
  const slots = spec.columns.flatMap((column): Slot[] => {
    const key = column.path.at(-1);
    return key === undefined
      ? []
      : [{ column, key, group: groupOf(column.path.slice(0, -1)), read: cellReader(column) }];
  });
  const slotOf = new Map(slots.map((slot) => [slot.column.name, slot]));
  return {
    slots: header.map((name) => slotOf.get(name)),
    missing: slots.filter(({ column }) => !header.includes(column.name)),
    groups,
    names: spec.columns
      .filter((column) => column.noteNameOf !== undefined && header.includes(column.name))
      .map((column) => ({
        nameIndex: header.indexOf(column.name),
        midiIndex: header.indexOf(column.noteNameOf ?? ''),
      })),
    furtherIndex: header.indexOf(furtherColumn.name),
  };
}

/** Told of faults while one row after another is read, so that nothing is made anew for each row. */
type Faults = { count: number; tell: CellFault };

function createDecoder(plan: Plan): RowDecoder {
  let onFault: CellFault = () => undefined;
  const faults: Faults = {
    count: 0,
    tell(column, message) {
      faults.count += 1;
      onFault(column, message);
    },
  };
  return {
    row(cells, onRowFault) {
      onFault = onRowFault;
      const before = faults.count;
      const row = decode(plan, cells, faults);
      return faults.count === before ? row : undefined;
    },
  };
}

function decode(plan: Plan, cells: readonly string[], { tell }: Faults): PlainObject {
  const objects: (PlainObject | undefined)[] = [];
  for (const { whenEmpty } of plan.groups) objects.push(whenEmpty === undefined ? {} : undefined);
  let later: Slot[] | undefined;
  for (let index = 0; index < plan.slots.length; index++) {
    const slot = plan.slots[index];
    if (slot === undefined) continue;
    const cell = cells[index] ?? '';
    if (cell === '') {
      if (fillEmpty(slot, objects[slot.group])) continue;
      later ??= [];
      later.push(slot);
      continue;
    }
    const value = slot.read(cell);
    if (value instanceof UnreadableCell) tell(slot.column.name, value.fault);
    else objectAt(objects, slot.group)[slot.key] = value;
  }
  linkGroups(plan, objects);
  const refused = later === undefined && plan.missing.length === 0 ? NONE : stillEmpty(plan, later ?? [], objects);
  if (plan.names.length > 0) checkNames(plan, cells, tell);
  const row = objectAt(objects, 0);
  mergeFurther(plan, row, cells, tell);
  for (const slot of refused) if (!hasValue(row, slot)) tell(slot.column.name, 'is empty and has to have a value');
  return row;
}

const NONE: readonly Slot[] = [];

/** Empty cells that have to have a value; those of an object that is not there need none. */
function stillEmpty({ missing }: Plan, later: readonly Slot[], objects: readonly (PlainObject | undefined)[]): Slot[] {
  return [...later, ...missing].filter((slot) => {
    const object = objects[slot.group];
    return object !== undefined && !fillEmpty(slot, object);
  });
}

function objectAt(objects: (PlainObject | undefined)[], index: number): PlainObject {
  const made = objects[index] ?? {};
  objects[index] = made;
  return made;
}

/** Groups into the objects around them; an optional group that no cell speaks of is null or absent. */
function linkGroups({ groups }: Plan, objects: (PlainObject | undefined)[]): void {
  for (let index = groups.length - 1; index > 0; index--) {
    const group = groups[index];
    if (group === undefined) continue;
    const object = objects[index];
    const value = object ?? (group.whenEmpty === 'null' ? null : undefined);
    if (value === undefined) continue;
    const parent = objects[group.parent] ?? {};
    objects[group.parent] = parent;
    parent[group.key] = value;
  }
}

/** False where it has to have a value, and where it is not known yet whether the object that it is in is there. */
function fillEmpty({ column, key }: Slot, object: PlainObject | undefined): boolean {
  if (column.empty === 'absent') return true;
  if (object === undefined || column.empty === 'refused') return false;
  object[key] = column.empty === 'null' ? null : '';
  return true;
}

function hasValue(row: PlainObject, { column }: Slot): boolean {
  let value: unknown = row;
  for (const key of column.path) {
    if (!isPlainObject(value)) return true;
    if (!Object.hasOwn(value, key)) return false;
    value = value[key];
  }
  return true;
}

function checkNames({ names, slots }: Plan, cells: readonly string[], fault: CellFault): void {
  for (const { nameIndex, midiIndex } of names) {
    const name = cells[nameIndex] ?? '';
    const midi = cells[midiIndex] ?? '';
    if (name === '' || nameToMidi(name) === Number(midi || Number.NaN)) continue;
    const midiColumn = slots[midiIndex]?.column.name ?? 'the MIDI number';
    fault(midiColumn, `is "${shortened(midi)}" and the note beside it is "${shortened(name)}"; one of them is wrong`);
  }
}

function mergeFurther({ furtherIndex }: Plan, row: PlainObject, cells: readonly string[], fault: CellFault): void {
  const cell = furtherIndex === -1 ? '' : (cells[furtherIndex] ?? '');
  if (cell === '') return;
  const outcome = readTaggedJson(cell, true);
  if (!outcome.ok) fault(furtherColumn.name, outcome.fault);
  else if (!isPlainObject(outcome.value)) fault(furtherColumn.name, 'has to be an object in JSON, such as {"a":1}');
  else {
    const repeated = mergeInto(row, outcome.value);
    if (repeated !== undefined)
      fault(furtherColumn.name, `repeats ${shortened(repeated)}, which has a column of its own`);
  }
}

/** Returns the name of a field that is there already. */
function mergeInto(object: PlainObject, further: PlainObject): string | undefined {
  let repeated: string | undefined;
  for (const [key, value] of Object.entries(further)) {
    const before = Object.hasOwn(object, key) ? object[key] : undefined;
    if (isPlainObject(before) && isPlainObject(value)) repeated ??= mergeInto(before, value);
    else if (value === ABSENT) delete object[key];
    else if (before !== undefined && before !== null && before !== '') repeated ??= key;
    else if (isPlainObject(value)) {
      const made: PlainObject = {};
      mergeInto(made, value);
      object[key] = made;
    } else object[key] = value;
  }
  return repeated;
}
