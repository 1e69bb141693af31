/** The invented workshop in the database: whether it is there, and taking it away. Nobody's own records are touched. */
import type { RecordsDatabase } from './database.ts';
import { bothFlags } from './recordSet.ts';
import { isDeleted } from './soundRows.ts';
import { outcomeOf, type WriteOutcome } from './writeOutcome.ts';

/** Besides the takes, which have another index. */
const TABLES_BY_INSTRUMENT = [
  'sounds',
  'surveys',
  'visits',
  'events',
  'torques',
  'schedules',
  'decisions',
  'trials',
  'photographs',
  'photographFiles',
  'rivals',
] as const;

/** A setting: true from the first write of the demonstration to the last one, so that an interruption is known afterwards. */
export const DEMONSTRATION_BEGUN = 'demonstration.begun';

export async function hasDemonstration(database: RecordsDatabase): Promise<boolean> {
  return (await database.instruments.filter((row) => row.isDemonstration && !isDeleted(row)).count()) > 0;
}

export function removeDemonstration(database: RecordsDatabase): Promise<WriteOutcome> {
  return outcomeOf(() =>
    database.transaction('rw', database.tables, async () => {
      const ids = await database.instruments.filter((row) => row.isDemonstration).primaryKeys();
      await database.takes.where('[instrumentId+keptFlag]').anyOf(ids.flatMap(bothFlags)).delete();
      for (const name of TABLES_BY_INSTRUMENT) await database.table(name).where('instrumentId').anyOf(ids).delete();
      await database.instruments.bulkDelete(ids);
      await database.settings.delete(DEMONSTRATION_BEGUN);
      return { written: true as const };
    }),
  );
}
