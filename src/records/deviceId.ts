/** The name of this browser's records among all devices that edit the same instruments: made up once, and kept with them. */
import type { Table } from 'dexie';
import { uuidFromBytes } from './newId.ts';
import type { SettingRow } from './rows.ts';

const KEY = 'deviceId';

/** Two tabs that open new records at once agree: who comes second reads what the first one wrote. */
export async function deviceIdOf(settings: Table<SettingRow, string>): Promise<string> {
  const found = await settings.get(KEY);
  if (typeof found?.value === 'string') return found.value;
  return settings.db.transaction('rw', settings, async () => {
    const meanwhile = await settings.get(KEY);
    if (typeof meanwhile?.value === 'string') return meanwhile.value;
    const deviceId = uuidFromBytes(crypto.getRandomValues(new Uint8Array(16)));
    await settings.put({ key: KEY, value: deviceId });
    return deviceId;
  });
}
