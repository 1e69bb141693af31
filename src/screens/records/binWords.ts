/** What a deletion is called in the bin. */
import { formatDate, formatNote } from '../../piano/format.ts';
import type { BinEntry, Deleted } from '../../records/bin.ts';
import { texts } from '../../ui/texts.ts';

const words = texts.records.bin.kinds;

/** @example 'Survey, as found, visit of 4 May 2021, The attic upright' */
export function binWords({ what, instrumentName, visitedOn }: BinEntry): string {
  const visit = visitedOn === null ? null : texts.visit.title(formatDate(visitedOn));
  return [ownWords(what), visit, instrumentName].filter((part) => part !== null).join(', ');
}

/** Of any row that can be deleted; other tables by their names. */
export function deletedWords({ table, row }: { readonly table: string; readonly row: unknown }): string {
  const isKnown = Object.keys(words).includes(table);
  return isKnown ? ownWords({ table, row } as Deleted) : table;
}

function ownWords(deleted: Deleted): string {
  switch (deleted.table) {
    case 'instruments':
      return words.instruments(deleted.row.name);
    case 'visits':
      return words.visits(formatDate(deleted.row.visitedOn));
    case 'surveys':
      return words.surveys(texts.common.stage[deleted.row.stage]);
    case 'events':
      return words.events(texts.instrument.events.kinds[deleted.row.kind], formatDate(deleted.row.happenedOn));
    case 'takes':
    case 'torques':
    case 'decisions':
    case 'trials':
      return words[deleted.table](formatNote(deleted.row.midi));
    case 'photographs':
      return words.photographs(deleted.row.caption);
    case 'schedules':
    case 'wireGrades':
      return words[deleted.table](deleted.row.name);
  }
}
