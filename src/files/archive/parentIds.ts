/** Which rows are there for others to refer to. */
import type { TableSpec } from './tableSpec.ts';
import type { PlainObject } from './taggedJson.ts';

export type ParentIds = {
  /** False where the row refers to one that is not there; else its own id is known from now on. */
  accept(spec: TableSpec, row: object): boolean;
  has(table: string, id: string): boolean;
};

export function createParentIds(): ParentIds {
  const idsOf = new Map<string, Set<unknown>>();
  const has = (table: string, id: unknown) => idsOf.get(table)?.has(id) === true;
  return {
    has,
    accept(spec, row) {
      for (const { path, table } of singleReferences(spec)) {
        const id = (row as PlainObject)[path];
        if (id !== null && id !== undefined && !has(table, id)) return false;
      }
      const { id } = row as { id?: unknown };
      if (id !== undefined) setOf(idsOf, spec.name).add(id);
      return true;
    },
  };
}

function setOf(sets: Map<string, Set<unknown>>, name: string): Set<unknown> {
  const found = sets.get(name) ?? new Set();
  sets.set(name, found);
  return found;
}

export type SingleReference = { readonly path: string; readonly column: string; readonly table: string };

const known = new WeakMap<TableSpec, readonly SingleReference[]>();

/** The foreign keys of one column each: all but those of partials, beats and components, which are read along with their take. */
export function singleReferences(spec: TableSpec): readonly SingleReference[] {
  const before = known.get(spec);
  if (before) return before;
  const references = spec.foreignKeys.flatMap(({ columns: [columnName, ...others], table }) => {
    const column = spec.columns.find(({ name }) => name === columnName);
    const [path, ...inner] = column?.path ?? [];
    return path === undefined || inner.length > 0 || columnName === undefined || others.length > 0
      ? []
      : [{ path, column: columnName, table }];
  });
  known.set(spec, references);
  return references;
}
