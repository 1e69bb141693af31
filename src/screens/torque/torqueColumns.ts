/** What every table of torques says of a pin. */
import { formatNote } from '../../piano/format.ts';
import { formatMultiple, formatTorqueValue } from '../../piano/formatTorque.ts';
import type { StringPosition } from '../../piano/reading.ts';
import { torqueBand } from '../../stability/torqueBands.ts';
import type { Column } from '../../ui/DataTable.tsx';
import { texts } from '../../ui/texts.ts';
import { stringName } from './deskWords.ts';
import { type PinLoads, pullMultiple } from './pinLoads.ts';

const words = texts.torque.readings;

type ReadPin = { readonly midi: number; readonly stringPosition: StringPosition; readonly torqueNm: number };

export function torqueColumns(loads: PinLoads): Column<ReadPin>[] {
  const ratio: Column<ReadPin> = {
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
  ];
}

/** A torque as a multiple of its string's pull, or why that is not known. */
export function ratioWords(torqueNm: number, midi: number, loads: PinLoads): string {
  const load = loads.of(midi);
  if (!load.known) return texts.torque.load.unknown[load.reason];
  const multiple = formatMultiple(pullMultiple(torqueNm, load) ?? 0);
  return load.isInterpolated ? `${multiple} (${texts.torque.load.interpolated})` : multiple;
}
