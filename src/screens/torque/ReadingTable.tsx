import { useState } from 'react';
import { formatNote } from '../../piano/format.ts';
import { formatTorqueValue } from '../../piano/formatTorque.ts';
import type { TorqueReading } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import { torqueBand } from '../../stability/torqueBands.ts';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault, type WriteFaultValue } from '../../ui/WriteFault.tsx';
import { pinName, stringName } from './deskWords.ts';
import { ratioWords } from './PinTable.tsx';
import type { PinLoads } from './pinLoads.ts';
import { removeTorque } from './storeTorque.ts';
import styles from './torque.module.css';

const words = texts.torque.readings;

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
        columns={[...columnsOf(loads), actions]}
        rows={readings}
        rowKey={(reading) => reading.id}
        stacksWhenNarrow
      />
    </>
  );
}

function columnsOf(loads: PinLoads): Column<TorqueReading>[] {
  const ratio: Column<TorqueReading> = {
    key: 'ratio',
    title: words.ratio,
    isNumber: true,
    cell: ({ midi, torqueNm }) => ratioWords(torqueNm, midi, loads),
  };
  return [
    { key: 'note', title: words.noteName, isRowHeader: true, cell: ({ midi }) => formatNote(midi) },
    { key: 'string', title: words.string, cell: ({ stringPosition }) => stringName(stringPosition) },
    { key: 'nm', title: 'N·m', isNumber: true, cell: ({ torqueNm }) => formatTorqueValue(torqueNm, 'N·m') },
    { key: 'inlb', title: 'in·lb', isNumber: true, cell: ({ torqueNm }) => formatTorqueValue(torqueNm, 'in·lb') },
    ...(loads.hasSchedule ? [ratio] : []),
    { key: 'band', title: words.band, cell: ({ torqueNm }) => texts.torque.bands[torqueBand(torqueNm)] },
    { key: 'direction', title: words.direction, cell: ({ direction }) => texts.torque.read[direction] },
    { key: 'remark', title: words.remark, cell: ({ remark }) => remark },
  ];
}
