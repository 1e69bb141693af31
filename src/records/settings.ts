/** What this device remembers beside the records: never exported, never merged. */
import type { RecordsDatabase } from './database.ts';
import { outcomeOf, type WriteOutcome } from './writeOutcome.ts';

export type SettingRecords = {
  /** Undefined where nothing was remembered; whoever reads it checks its shape. */
  setting(key: string): Promise<unknown>;
  /** Anything that the database can clone, a folder's handle included. */
  saveSetting(key: string, value: unknown): Promise<WriteOutcome>;
};

export function settingFunctions(database: RecordsDatabase): SettingRecords {
  return {
    setting: async (key) => (await database.settings.get(key))?.value,
    saveSetting: (key, value) =>
      outcomeOf(async () => {
        await database.settings.put({ key, value });
        return { written: true as const };
      }),
  };
}
