/** A part of the program that is fetched apart, since it is large. */
export type Fetched<Value> = {
  readonly fetch: () => Promise<Value>;
  /** Null until it is there. */
  readonly now: () => Value | null;
  /** Fetches what may be needed later; whoever needs it tries again where it could not be had. */
  readonly fetchAhead: () => void;
};

export function fetchedOnce<Value>(get: () => Promise<Value>): Fetched<Value> {
  let value: Value | null = null;
  let getting: Promise<Value> | null = null;
  const begin = async () => {
    value = await get();
    return value;
  };
  const fetch = () => {
    getting ??= begin();
    return getting;
  };
  return {
    fetch,
    now: () => value,
    fetchAhead: () => {
      fetch().catch(() => {
        getting = null;
      });
    },
  };
}
