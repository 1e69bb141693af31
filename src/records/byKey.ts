/** Ascending by a text key, then by id, so that the order never depends on the database. */
export function by<Row extends { readonly id: string }>(key: (row: Row) => string): (a: Row, b: Row) => number {
  return (a, b) => compareText(key(a), key(b)) || compareText(a.id, b.id);
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
