import { useState } from 'react';
import type { FieldDifference } from '../../files/merge/differences.ts';
import { formatDate } from '../../piano/format.ts';
import { formatAny } from '../../piano/formatAny.ts';
import type { Records } from '../../records/records.ts';
import type { RivalPair } from '../../records/rivals.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { useObserved } from '../../ui/useObserved.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import styles from './records.module.css';
import { fieldWords, rivalWords } from './rivalWords.ts';

const words = texts.records.rivals;
/** So many are shown at once. */
const SHOWN_COUNT = 20;

/** Nothing where there are none. */
export function RivalSection({ records }: { readonly records: Records }) {
  const rivals = useObserved<RivalPair[]>('rivals', (onValue, onFault) =>
    records.observe(() => records.listRivals(), onValue, onFault),
  );
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const pairs = rivals.state === 'ready' ? rivals.value : [];
  if (pairs.length === 0) return null;
  const choose = async ({ table, rowId }: RivalPair, rivalId: string | null) => {
    const outcome = await records.chooseVersion(table, rowId, rivalId);
    setFault(outcome.written ? null : outcome);
  };
  return (
    <Section title={words.title} note={words.note}>
      <p>{words.what(pairs.length)}</p>
      <WriteFault fault={fault} />
      {pairs.slice(0, SHOWN_COUNT).map((pair) => (
        <Pair key={pair.rivalId} pair={pair} onChoose={(rivalId) => void choose(pair, rivalId)} />
      ))}
      {pairs.length > SHOWN_COUNT && <p>{words.more(pairs.length - SHOWN_COUNT)}</p>}
    </Section>
  );
}

const COLUMNS: readonly Column<FieldDifference>[] = [
  { key: 'field', title: words.field, isRowHeader: true, cell: ({ path }) => fieldWords(path) },
  { key: 'shown', title: words.shown, cell: ({ one }) => formatAny(one) || words.empty },
  { key: 'other', title: words.other, cell: ({ other }) => formatAny(other) || words.empty },
];

function Pair({ pair, onChoose }: { readonly pair: RivalPair; readonly onChoose: (rivalId: string | null) => void }) {
  const title = rivalWords(pair);
  return (
    <div className={styles.pair}>
      <h3>{title}</h3>
      <p className={styles.hint}>{words.found(formatDate(pair.foundAt))}</p>
      <DataTable
        caption={words.caption(title)}
        isCaptionHidden
        columns={COLUMNS}
        rows={pair.differences}
        rowKey={({ path }) => path.join('.')}
        stacksWhenNarrow
      />
      <p className={styles.actions}>
        <Button label={`${words.keepShown}: ${title}`} onPress={() => onChoose(null)}>
          {words.keepShown}
        </Button>
        <Button label={`${words.takeOther}: ${title}`} onPress={() => onChoose(pair.rivalId)}>
          {words.takeOther}
        </Button>
      </p>
    </div>
  );
}
