/** Where the desk stands: the row in hand, and the rows that are marked to be decided together. */

export type DeskState = { readonly current: string | null; readonly marked: ReadonlySet<string> };

export const UNTOUCHED_DESK: DeskState = { current: null, marked: new Set() };

/** The index of the row in hand: the first one where the row that was in hand is not shown any more. */
export function currentIndex(keys: readonly string[], { current }: DeskState): number {
  return Math.max(0, current === null ? 0 : keys.indexOf(current));
}

/** Moves within the rows; with marking, the row left and the row reached are marked. */
export function moved(keys: readonly string[], state: DeskState, by: number, isMarking = false): DeskState {
  const from = currentIndex(keys, state);
  const to = Math.min(keys.length - 1, Math.max(0, from + by));
  const current = keys[to] ?? null;
  if (!isMarking) return { ...state, current };
  const touched = [keys[from], keys[to]].filter((key) => key !== undefined);
  return { current, marked: new Set([...state.marked, ...touched]) };
}

export function marked(state: DeskState, key: string): DeskState {
  const next = new Set(state.marked);
  if (!next.delete(key)) next.add(key);
  return { current: key, marked: next };
}

/** What a decision is for: the marked rows in sight, else the row in hand. */
export function targetsOf(keys: readonly string[], state: DeskState): string[] {
  const inSight = keys.filter((key) => state.marked.has(key));
  if (inSight.length > 0) return inSight;
  const current = keys[currentIndex(keys, state)];
  return current === undefined ? [] : [current];
}

/** After a decision the marks are gone; without any the next row comes to hand. */
export function afterDeciding(keys: readonly string[], state: DeskState): DeskState {
  if (keys.some((key) => state.marked.has(key))) return { ...state, marked: new Set() };
  return moved(keys, state, 1);
}
