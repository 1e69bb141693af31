/** A choice that is remembered on this device and not part of the records. */

export type DeviceSetting<Value extends string> = {
  readonly read: () => Value;
  readonly write: (value: Value) => void;
};

/** @param values the first is what holds while nothing was chosen, or where the browser keeps no settings */
export function deviceSetting<Value extends string>(
  key: string,
  values: readonly [Value, ...Value[]],
): DeviceSetting<Value> {
  return {
    read: () => {
      const stored = readStored(key);
      return values.find((value) => value === stored) ?? values[0];
    },
    write: (value) => {
      try {
        window.localStorage.setItem(key, value);
      } catch (error) {
        console.info(`${key} is not remembered: this browser keeps no settings for this page.`, error);
      }
    },
  };
}

/** Private windows may refuse the question. */
function readStored(key: string): string | null {
  try {
    return window.localStorage.getItem(key);
  } catch {
    return null;
  }
}
