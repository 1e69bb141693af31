import { formatNote } from '../../piano/format.ts';
import { formatMultiple, formatTorqueValue } from '../../piano/formatTorque.ts';
import { torqueBand } from '../../stability/torqueBands.ts';
import type { PinTorque } from '../../stability/torquePins.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { texts } from '../../ui/texts.ts';
import { stringName } from './deskWords.ts';
import { type PinLoads, pullMultiple } from './pinLoads.ts';

const words = texts.torque.readings;

/** The chart's numbers, for reading out and for copying. */
export function PinTable({ pins, loads }: { readonly pins: readonly PinTorque[]; readonly loads: PinLoads }) {
  return (
    <Disclosure summary={texts.torque.over.table}>
      <DataTable
        caption={texts.torque.over.tableCaption}
        columns={columnsOf(loads)}
        rows={pins}
        rowKey={({ midi, stringPosition }) => `${midi} ${stringPosition}`}
      />
    </Disclosure>
  );
}

function columnsOf(loads: PinLoads): Column<PinTorque>[] {
  const ratio: Column<PinTorque> = {
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
    { key: 'read', title: words.direction, cell: ({ read }) => texts.torque.read[read] },
  ];
}

/** A torque as a multiple of its string's pull, or why that is not known. */
export function ratioWords(torqueNm: number, midi: number, loads: PinLoads): string {
  const load = loads.of(midi);
  if (!load.known) return texts.torque.load.unknown[load.reason];
  const multiple = formatMultiple(pullMultiple(torqueNm, load) ?? 0);
  return load.isInterpolated ? `${multiple} (${texts.torque.load.interpolated})` : multiple;
}
