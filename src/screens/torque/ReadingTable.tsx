import { useState } from 'react';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault, type WriteFaultValue } from '../../ui/WriteFault.tsx';
import { pinName } from './deskWords.ts';
import type { PinLoads } from './pinLoads.ts';
import { removeTorque } from './storeTorque.ts';
import styles from './torque.module.css';
import { torqueColumns } from './torqueColumns.ts';

const words = texts.torque.readings;

const AS_TYPED: readonly Column<TorqueReading>[] = [
  { key: 'direction', title: words.direction, cell: ({ direction }) => texts.torque.read[direction] },
  { key: 'remark', title: words.remark, cell: ({ remark }) => remark },
];

type Props = {
  readonly records: Records;
  readonly readings: readonly TorqueReading[];
  readonly loads: PinLoads;
  readonly onChange: (reading: TorqueReading) => void;
};

export function ReadingTable({ records, readings, loads, onChange }: Props) {
  const [fault, setFault] = useState<WriteFaultValue | null>(null);
  if (readings.length === 0)
    return (
      <EmptyState>
        <p>{words.empty}</p>
      </EmptyState>
    );
  const actions: Column<TorqueReading> = {
    key: 'actions',
    title: words.actions,
    cell: (reading) => (
      <span className={styles.actions}>
        <Button look="quiet" label={words.changeLabel(pinName(reading))} onPress={() => onChange(reading)}>
          {words.change}
        </Button>
        <Button
          look="quiet"
          label={words.removeLabel(pinName(reading))}
          onPress={() => void removeTorque(records, reading).then(setFault)}
        >
          {words.remove}
        </Button>
      </span>
    ),
  };
  return (
    <>
      <WriteFault fault={fault} />
      <DataTable
        caption={words.caption}
        isCaptionHidden
        columns={[...torqueColumns(loads), ...AS_TYPED, actions]}
        rows={readings}
        rowKey={(reading) => reading.id}
        stacksWhenNarrow
      />
    </>
  );
}
