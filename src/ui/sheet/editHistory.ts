/** Steps that can be taken back and done again. Each step is a whole value; the parts that it shares with the one before cost nothing. */

export type EditHistory<Value> = {
  readonly past: readonly Value[];
  readonly present: Value;
  /** What was taken back, the latest first. */
  readonly future: readonly Value[];
};

/** More steps back than anybody goes. */
const LONGEST = 500;

export function startHistory<Value>(present: Value): EditHistory<Value> {
  return { past: [], present, future: [] };
}

export function withStep<Value>(history: EditHistory<Value>, present: Value): EditHistory<Value> {
  if (present === history.present) return history;
  return { past: [...history.past, history.present].slice(-LONGEST), present, future: [] };
}

/** The same history where nothing is left to take back. */
export function stepBack<Value>(history: EditHistory<Value>): EditHistory<Value> {
  if (history.past.length === 0) return history;
  return {
    past: history.past.slice(0, -1),
    present: history.past[history.past.length - 1] as Value,
    future: [history.present, ...history.future],
  };
}

export function stepForward<Value>(history: EditHistory<Value>): EditHistory<Value> {
  if (history.future.length === 0) return history;
  return {
    past: [...history.past, history.present],
    present: history.future[0] as Value,
    future: history.future.slice(1),
  };
}
