import { formatBeatRate, formatCents, formatNote } from '../../piano/format.ts';
import type { NoteReading } from '../../piano/reading.ts';
import type { UnisonMatch } from '../../stringing/falseBeats/unisonMatch.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './strings.module.css';
import { beatNowHz, isApart, unisonRows } from './unisonRows.ts';

const words = texts.strings.unisons;

const COLUMNS: readonly Column<UnisonMatch>[] = [
  { key: 'note', title: words.noteName, isRowHeader: true, cell: ({ midi }) => formatNote(midi) },
  {
    key: 'apart',
    title: words.apart,
    cell: ({ pairs }) => (
      <ul className={styles.pairs}>
        {pairs.map((pair) => (
          <li key={pair.strings.join()}>{pairText(pair)}</li>
        ))}
      </ul>
    ),
  },
  { key: 'now', title: words.now, cell: (match) => formatBeatRate(beatNowHz(match)) },
  { key: 'left', title: words.left, cell: leftText },
  {
    key: 'own',
    title: words.own,
    cell: ({ falseBeats }) =>
      falseBeats.length === 0
        ? words.noOwn
        : words.ownStrings(falseBeats.map(({ stringPosition }) => stringPosition).join(', ')),
  },
];

/** What a unison's beating comes from, before any wire is blamed. */
export function UnisonSection({ readings }: { readonly readings: readonly NoteReading[] }) {
  const rows = unisonRows(readings);
  const apart = rows.filter(isApart).length;
  const left = rows.filter(({ leftBeatHz }) => leftBeatHz !== null).length;
  return (
    <Section title={words.title} note={words.note}>
      {rows.length === 0 ? (
        <p>{words.empty}</p>
      ) : (
        <>
          <p>{words.count(rows.length, apart, left)}</p>
          <DataTable
            caption={words.caption}
            columns={COLUMNS}
            rows={rows}
            rowKey={({ midi }) => String(midi)}
            stacksWhenNarrow
          />
          <p>{words.meaning}</p>
        </>
      )}
    </Section>
  );
}

function pairText({ strings: [one, other], cents, centsStandardUncertainty, isApart }: UnisonMatch['pairs'][number]) {
  if (!isApart) return words.same(one, other);
  return words.pair(one, other, formatCents(cents, centsStandardUncertainty));
}

function leftText({ leftBeatHz, pairs }: UnisonMatch): string {
  if (leftBeatHz !== null) return words.leftBeat(formatBeatRate(leftBeatHz));
  return pairs.every(({ left }) => left.length === 0) ? words.unknownLeft : words.nothingLeft;
}
