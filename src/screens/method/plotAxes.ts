/** The axes of this page's pictures. */
import { formatDuration, formatNote, formatNumber, formatSigned } from '../../piano/format.ts';
import { noteTicks, roundScale } from '../../ui/chartScale.ts';
import type { PlotAxis } from '../../ui/charts/PlainPlot.tsx';

/** @example steppedAxis(0, 10, 5, String).ticks.map(({ at }) => at) // [0, 5, 10] */
export function steppedAxis(low: number, high: number, step: number, label: (value: number) => string): PlotAxis {
  const count = Math.floor((high - low) / step + 1e-9) + 1;
  const ticks = Array.from({ length: count }, (_, index) => low + index * step);
  return { low, high, ticks: ticks.map((at) => ({ at, label: label(at) })) };
}

/** Round decibels that hold the levels. */
export function levelAxis(levelsDb: readonly number[], deepestDb: number): PlotAxis {
  const high = 20 * Math.ceil(Math.max(...levelsDb) / 20);
  const low = Math.max(deepestDb, 20 * Math.floor(Math.min(...levelsDb) / 20));
  return steppedAxis(low, high, 20, (value) => formatNumber(value, 0));
}

export function secondsAxis(toS: number): PlotAxis {
  return steppedAxis(0, toS, toS > 2 ? 1 : 0.5, (timeS) => (timeS === 0 ? '0' : formatDuration(timeS)));
}

export function centsAxis(values: readonly number[]): PlotAxis {
  const { low, high, ticks } = roundScale(values);
  return { low, high, ticks: ticks.map((at) => ({ at, label: at === 0 ? '0' : formatSigned(at, 0) })) };
}

export function notesAxis(lowestMidi: number, highestMidi: number): PlotAxis {
  const ticks = noteTicks({ lowestMidi, highestMidi }).map((at) => ({ at, label: formatNote(at) }));
  return { low: lowestMidi - 0.5, high: highestMidi + 0.5, ticks };
}
