/** What bringing in an archive does, in words. */
import { formatCount } from '../../piano/format.ts';
import type { InstrumentMerge, MergeReport } from '../../records/mergeArchive.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.records.import;

/** @example '240 new records, 3 changed, 12 sounds' */
export function summaryOf({ instruments, soundCount, photographCount }: MergeReport): string {
  const sum = (count: (row: InstrumentMerge) => number) => instruments.reduce((all, row) => all + count(row), 0);
  const parts = [
    [sum((row) => row.newRows), words.sum.newRows],
    [sum((row) => row.changedRows), words.sum.changedRows],
    [sum((row) => row.deletedRows), words.sum.deletedRows],
    [sum((row) => row.rivals), words.sum.rivals],
    [soundCount, words.sum.sounds],
    [photographCount, words.sum.photographs],
  ] as const;
  const told = parts.filter(([count]) => count > 0).map(([count, [one, many]]) => formatCount(count, one, many));
  return told.length === 0 ? words.sum.nothing : told.join(', ');
}
