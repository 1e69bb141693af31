import type { PinTorque } from '../../stability/torquePins.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import type { PinLoads } from './pinLoads.ts';
import { torqueColumns } from './torqueColumns.ts';

const READ: Column<PinTorque> = {
  key: 'read',
  title: texts.torque.readings.direction,
  cell: ({ read }) => texts.torque.read[read],
};

/** The chart's numbers, for reading out and for copying. */
export function PinTable({ pins, loads }: { readonly pins: readonly PinTorque[]; readonly loads: PinLoads }) {
  return (
    <Disclosure summary={texts.torque.over.table}>
      <DataTable
        caption={texts.torque.over.tableCaption}
        columns={[...torqueColumns(loads), READ]}
        rows={pins}
        rowKey={({ midi, stringPosition }) => `${midi} ${stringPosition}`}
      />
    </Disclosure>
  );
}
