import { formatBeatRate, formatDate, formatLevel } from '../../piano/format.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import type { HistoryRow, WorkOutcome } from './stringHistory.ts';

const words = texts.strings.history;

const COLUMNS: readonly Column<HistoryRow>[] = [
  { key: 'date', title: words.date, isRowHeader: true, cell: ({ on }) => formatDate(on) },
  { key: 'what', title: words.what, cell: whatText },
  { key: 'beat', title: words.beat, cell: beatOf },
];

/** More rows than this stand folded. */
const SHOWN_ROWS = 8;

type Props = { readonly rows: readonly HistoryRow[]; readonly outcomes: readonly WorkOutcome[] };

export function HistorySection({ rows, outcomes }: Props) {
  const [shown, older] = [rows.slice(0, SHOWN_ROWS), rows.slice(SHOWN_ROWS)];
  return (
    <Section title={words.title} note={words.note}>
      {rows.length === 0 ? <p>{words.empty}</p> : <p>{firstBeat(rows)}</p>}
      <OutcomeList outcomes={outcomes} />
      {shown.length > 0 && <HistoryTable rows={shown} />}
      {older.length > 0 && (
        <Disclosure summary={words.older} isMadeWhenOpened>
          <HistoryTable rows={older} />
        </Disclosure>
      )}
    </Section>
  );
}

/** Whether the work helped, a sentence each. */
function OutcomeList({ outcomes }: { readonly outcomes: readonly WorkOutcome[] }) {
  return outcomes.map(({ decision, outcome }) => (
    <p key={decision.id}>
      <strong>
        {texts.strings.after.title(texts.strings.choices[decision.choice], formatDate(decision.doneOn ?? ''))}
      </strong>{' '}
      {texts.strings.after.outcomes[outcome]}
    </p>
  ));
}

function HistoryTable({ rows }: { readonly rows: readonly HistoryRow[] }) {
  return (
    <DataTable
      caption={words.caption}
      isCaptionHidden
      columns={COLUMNS}
      rows={rows}
      rowKey={({ kind, key }) => `${kind} ${key}`}
      stacksWhenNarrow
    />
  );
}

function firstBeat(rows: readonly HistoryRow[]): string {
  const first = rows.findLast((row) => row.kind === 'survey' && row.visit.state === 'beats');
  return first ? words.first(formatDate(first.on)) : words.never;
}

function whatText(row: HistoryRow): string {
  switch (row.kind) {
    case 'survey':
      return words.survey(texts.common.stage[row.stage]);
    case 'event':
      return words.event(texts.instrument.events.kinds[row.event.kind]);
    case 'work':
      return words.work(texts.strings.choices[row.decision.choice]);
    case 'trial':
      return words.trial(texts.strings.trials.kinds[row.trial.kind]);
  }
}

function beatOf(row: HistoryRow): string {
  if (row.kind !== 'survey') return '';
  const [heaviest] = row.visit.partials;
  if (!heaviest) return words.states[row.visit.state];
  const { partialNumber, rateHz, depthDb } = heaviest;
  return texts.strings.partialBeat(partialNumber, formatBeatRate(rateHz), formatLevel(depthDb));
}
