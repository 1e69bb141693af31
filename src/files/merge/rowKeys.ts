/** How rows are named across tables. */
import type { ArchivedRival } from '../archive/archiveContents.ts';

/** @example rowKey('visits', 'a') // 'visits/a' */
export function rowKey(table: string, id: string): string {
  return `${table}/${id}`;
}

export function tableOfKey(key: string): string {
  return key.slice(0, key.indexOf('/'));
}

/** Of the row whose other version it is. */
export function rivalKey({ table, rowId }: ArchivedRival): string {
  return rowKey(table, rowId);
}
