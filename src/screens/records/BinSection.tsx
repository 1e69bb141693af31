import { useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { BinEntry } from '../../records/bin.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { BulkDelete } from './BulkDelete.tsx';
import { binWords } from './binWords.ts';
import styles from './records.module.css';
import { type Bin, useBin } from './useBin.ts';

const words = texts.records.bin;

export function BinSection({ records }: { readonly records: Records }) {
  const bin = useBin(records);
  return (
    <Section title={words.title} note={words.note}>
      {bin.entries.state === 'ready' ? (
        <BinBody bin={bin} entries={bin.entries.value} />
      ) : (
        <ReadState observed={bin.entries} />
      )}
      <WriteFault fault={bin.fault} />
      <p role="status">{bin.message}</p>
      <BulkDelete records={records} />
    </Section>
  );
}

function BinBody({ bin, entries }: { readonly bin: Bin; readonly entries: readonly BinEntry[] }) {
  const [isAsking, setAsking] = useState(false);
  if (entries.length === 0)
    return (
      <EmptyState>
        <p>{words.empty}</p>
      </EmptyState>
    );
  return (
    <>
      <DataTable
        caption={words.caption}
        isCaptionHidden
        columns={columnsOf(bin)}
        rows={entries}
        rowKey={(entry) => entry.deletionId}
        stacksWhenNarrow
      />
      <p className={styles.actions}>
        {entries.length > 1 && (
          <Button isDisabled={bin.isBusy} onPress={() => void bin.restore(entries)}>
            {words.restoreAll}
          </Button>
        )}
        <Button look="quiet" isDisabled={bin.isBusy} onPress={() => setAsking(true)}>
          {words.purge}
        </Button>
      </p>
      {isAsking && <PurgeDialog bin={bin} entries={entries} onClose={() => setAsking(false)} />}
    </>
  );
}

function columnsOf(bin: Bin): Column<BinEntry>[] {
  return [
    { key: 'what', title: words.what, isRowHeader: true, cell: binWords },
    { key: 'when', title: words.when, cell: (entry) => formatDate(entry.deletedAt) },
    { key: 'rows', title: words.rows, isNumber: true, cell: (entry) => entry.rowCount },
    {
      key: 'restore',
      title: words.restore,
      cell: (entry) => (
        <Button
          isDisabled={bin.isBusy}
          label={words.restoreLabel(binWords(entry))}
          onPress={() => void bin.restore([entry])}
        >
          {words.restore}
        </Button>
      ),
    },
  ];
}

type PurgeProps = { readonly bin: Bin; readonly entries: readonly BinEntry[]; readonly onClose: () => void };

/** The one question that is asked: this has no way back. */
function PurgeDialog({ bin, entries, onClose }: PurgeProps) {
  const rowCount = entries.reduce((sum, entry) => sum + entry.rowCount, 0);
  const purge = () => {
    onClose();
    void bin.purge(entries);
  };
  return (
    <Dialog title={words.purgeTitle} onClose={onClose}>
      <p>{words.purgeWhat(rowCount)}</p>
      <p className={styles.actions}>
        <Button isLarge onPress={purge}>
          {words.purgeYes}
        </Button>
        <Button isLarge look="quiet" onPress={onClose}>
          {texts.common.cancel}
        </Button>
      </p>
    </Dialog>
  );
}
