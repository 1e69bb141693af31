import { type ClockCalibration, type ClockReference, isOffsetTold } from '../../piano/clock.ts';
import { formatDate, formatHz, formatTemperature, NOT_MEASURED } from '../../piano/format.ts';
import { formatPpm, formatPpmAsCents } from '../../piano/formatClock.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './microphoneClock.module.css';

const words = texts.clock.earlier;
const { fast, slow, flat, sharp } = texts.clock.result;

const COLUMNS: readonly Column<ClockCalibration>[] = [
  { key: 'when', title: words.when, isRowHeader: true, cell: ({ measuredAt }) => formatDate(measuredAt) },
  {
    key: 'microphone',
    title: words.microphone,
    cell: ({ deviceLabel }) => <span className={styles.name}>{deviceLabel || NOT_MEASURED}</span>,
  },
  { key: 'against', title: words.against, cell: ({ reference }) => againstText(reference) },
  { key: 'offset', title: words.offset, cell: (row) => `${formatPpm(row)} ${row.offsetPpm >= 0 ? fast : slow}` },
  {
    key: 'pitch',
    title: words.pitch,
    cell: (row) =>
      isOffsetTold(row) ? `${formatPpmAsCents(row.offsetPpm)} ${row.offsetPpm >= 0 ? flat : sharp}` : NOT_MEASURED,
  },
];

export function CalibrationTable({ calibrations }: { readonly calibrations: readonly ClockCalibration[] }) {
  return (
    <DataTable
      caption={words.caption}
      isCaptionHidden
      columns={COLUMNS}
      rows={calibrations}
      rowKey={({ id }) => id}
      stacksWhenNarrow
    />
  );
}

function againstText({ kind, statedHz, statedStandardUncertaintyHz, temperatureC }: ClockReference): string {
  const hz = formatHz(statedHz, statedStandardUncertaintyHz);
  return kind === 'tone' ? words.tone(hz) : words.fork(hz, formatTemperature(temperatureC));
}
