/**
 * Rows of a table as cells of a CSV file, exactly. What has no column, and what a column cannot hold, goes into the column `further` as
 * JSON, so that nothing of a row is lost, whatever program wrote it.
 */
import { midiToName } from '../../piano/note.ts';
import { type CellWriter, cellWriter } from './cellValues.ts';
import { type Cell, createLineWriter, csvLine, quotedCell } from './csvText.ts';
import { type Column, furtherColumn, type TableSpec } from './tableSpec.ts';
import { ABSENT, isPlainObject, type PlainObject, writeTaggedJson } from './taggedJson.ts';

type Leaf = { readonly isLeaf: true; readonly column: Column; readonly index: number; readonly write: CellWriter };
type Branch = {
  readonly isLeaf: false;
  readonly children: Map<string, Leaf | Branch>;
  /** Undefined where the object has to be there. */
  readonly whenEmpty: 'null' | 'absent' | undefined;
  /** Fields that have a table of their own. */
  readonly apart: readonly string[];
  /** The fields of the object before, in their order: nearly always those of the next one too, which saves looking each of them up. */
  readonly lastKeys: string[];
  readonly lastChildren: (Leaf | Branch | typeof APART | undefined)[];
};

const APART: unique symbol = Symbol('apart');

export type RowEncoder = {
  /** The first line of the file: all columns in their order, `further` last. */
  readonly header: string;
  /** As it stands in the file. */
  line(row: object): string;
};

export function headerOf(spec: TableSpec): string[] {
  return [...spec.columns, furtherColumn].map((column) => column.name);
}

export function createRowEncoder(spec: TableSpec): RowEncoder {
  const header = headerOf(spec);
  const root = rootBranch(spec);
  const names = noteNames(spec);
  const furtherIndex = header.length - 1;
  const cells = new Array<Cell>(header.length).fill('');
  const lineOf = createLineWriter([...spec.columns, furtherColumn].map(isOfNumbers));
  return {
    header: csvLine(header),
    line(row) {
      cells.fill('');
      const further = encode(root, row as PlainObject, cells);
      for (const { nameIndex, midiIndex } of names) cells[nameIndex] = noteName(cells[midiIndex] ?? '');
      if (further !== undefined) cells[furtherIndex] = quotedCell(writeTaggedJson(further));
      return lineOf(cells);
    },
  };
}

function isOfNumbers({ type }: Column): boolean {
  return type === 'number' || type === 'integer';
}

function rootBranch(spec: TableSpec): Branch {
  const root = emptyBranch(undefined, apartIn(spec, ''));
  spec.columns.forEach((column, index) => {
    const key = column.path.at(-1);
    if (key === undefined) return;
    const branch = branchAt(root, column.path.slice(0, -1), spec);
    branch.children.set(key, { isLeaf: true, column, index, write: cellWriter(column) });
  });
  return root;
}

function emptyBranch(whenEmpty: Branch['whenEmpty'], apart: readonly string[]): Branch {
  return { isLeaf: false, children: new Map(), whenEmpty, apart, lastKeys: [], lastChildren: [] };
}

function apartIn({ apart = {} }: TableSpec, group: string): readonly string[] {
  return apart[group] ?? [];
}

function branchAt(root: Branch, path: readonly string[], spec: TableSpec): Branch {
  let branch = root;
  path.forEach((key, depth) => {
    const found = branch.children.get(key);
    if (found && !found.isLeaf) {
      branch = found;
      return;
    }
    const group = path.slice(0, depth + 1).join('.');
    const made = emptyBranch(spec.optionalGroups[group], apartIn(spec, group));
    branch.children.set(key, made);
    branch = made;
  });
  return branch;
}

/** Fills the cells and returns what they could not hold. */
function encode(branch: Branch, object: PlainObject, cells: Cell[]): PlainObject | undefined {
  const { lastKeys, lastChildren } = branch;
  let further: PlainObject | undefined;
  let metCount = 0;
  let position = 0;
  for (const key in object) {
    const value = object[key];
    if (lastKeys[position] !== key) learn(branch, position, key);
    const child = lastChildren[position];
    position += 1;
    if (value === undefined || child === APART) continue;
    if (child !== undefined) metCount += 1;
    const rest = child === undefined ? value : encodeChild(child, value, cells);
    if (rest === NOTHING) continue;
    further ??= {};
    further[key] = rest;
  }
  return metCount < branch.children.size ? withAbsent(branch, object, further) : further;
}

function learn({ children, apart, lastKeys, lastChildren }: Branch, position: number, key: string): void {
  lastKeys[position] = key;
  lastChildren[position] = apart.includes(key) ? APART : children.get(key);
}

function encodeChild(child: Leaf | Branch, value: unknown, cells: Cell[]): unknown {
  if (!child.isLeaf) return encodeGroup(child, value, cells);
  return encodeLeaf(child, value, cells) ? NOTHING : value;
}

function encodeLeaf({ column, index, write }: Leaf, value: unknown, cells: Cell[]): boolean {
  if (value === null) return column.empty === 'null';
  if (value === '') return column.empty === 'empty text';
  const cell = write(value);
  if (cell === undefined) return false;
  cells[index] = cell;
  return true;
}

const NOTHING: unique symbol = Symbol('nothing');

function encodeGroup(branch: Branch, value: unknown, cells: Cell[]): unknown {
  if (value === null && branch.whenEmpty === 'null') return NOTHING;
  if (!isPlainObject(value)) return value;
  const rest = encode(branch, value, cells);
  if (branch.whenEmpty !== undefined && isEmpty(branch, cells)) return value;
  return rest ?? NOTHING;
}

function isEmpty(branch: Branch, cells: readonly Cell[]): boolean {
  for (const child of branch.children.values())
    if (child.isLeaf ? cells[child.index] !== '' : !isEmpty(child, cells)) return false;
  return true;
}

function withAbsent(branch: Branch, object: PlainObject, before: PlainObject | undefined): PlainObject | undefined {
  let further = before;
  for (const [key, child] of branch.children) {
    if (object[key] !== undefined) continue;
    const whenEmpty = child.isLeaf ? child.column.empty : child.whenEmpty;
    if (whenEmpty === 'absent') continue;
    further ??= {};
    further[key] = ABSENT;
  }
  return further;
}

function noteName(midiCell: Cell): string {
  return midiCell === '' ? '' : midiToName(Number(midiCell));
}

/** Where a note's name stands in a row, and where its MIDI number. */
export type NoteName = { readonly nameIndex: number; readonly midiIndex: number };

function noteNames(spec: TableSpec): NoteName[] {
  return spec.columns.flatMap((column, nameIndex) => {
    const midiIndex = spec.columns.findIndex(({ name }) => name === column.noteNameOf);
    return midiIndex === -1 ? [] : [{ nameIndex, midiIndex }];
  });
}
