/** Torque and slip of pins as the chart and its CSV file want them. */
import type { CsvSheet } from '../../files/csvTable.ts';
import { formatCents, formatNote } from '../../piano/format.ts';
import { formatTorque } from '../../piano/formatTorque.ts';
import { midiToName } from '../../piano/note.ts';
import type { StringPosition } from '../../piano/reading.ts';
import type { ChartPoint } from '../charts/pointParts.tsx';
import { texts } from '../texts.ts';

/** One pin of which both are known. `slipU` is one standard uncertainty; both in cents a year, flat below zero. */
export type TorqueSlipPin = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly torqueNm: number;
  readonly slipCentsPerYear: number;
  readonly slipU: number;
};

/** How many standard uncertainties the bars reach either way. */
const BAR_SIGMAS = 2;
/** More names than this run into each other. */
const MOST_NAMED = 8;

/**
 * Pins whose slip is beyond its bar, the fastest first. A name stands beside a sign where it runs into no other name, and no more
 * than there is room for.
 */
export function slipPoints(pins: readonly TorqueSlipPin[]): {
  readonly points: ChartPoint[];
  readonly beyond: TorqueSlipPin[];
} {
  const beyond = pins
    .filter(({ slipCentsPerYear, slipU }) => slipCentsPerYear + BAR_SIGMAS * slipU < 0)
    .sort((a, b) => a.slipCentsPerYear - b.slipCentsPerYear);
  const named: TorqueSlipPin[] = [];
  const roomOf = roomForNames(pins);
  for (const pin of beyond)
    if (named.length < MOST_NAMED && named.every((other) => roomOf(pin, other))) named.push(pin);
  return { points: pins.map((pin) => pointOf(pin, named.includes(pin))), beyond };
}

/** A name takes this share of the drawing's width and height. */
const NAME_WIDTH = 0.07;
const NAME_HEIGHT = 0.06;

function roomForNames(pins: readonly TorqueSlipPin[]): (a: TorqueSlipPin, b: TorqueSlipPin) => boolean {
  const slips = pins.flatMap(({ slipCentsPerYear, slipU }) => [
    slipCentsPerYear - 2 * slipU,
    slipCentsPerYear + 2 * slipU,
  ]);
  const width = NAME_WIDTH * Math.max(...pins.map(({ torqueNm }) => torqueNm));
  const height = NAME_HEIGHT * (Math.max(...slips) - Math.min(...slips));
  return (a, b) =>
    Math.abs(a.torqueNm - b.torqueNm) > width || Math.abs(a.slipCentsPerYear - b.slipCentsPerYear) > height;
}

function pointOf(pin: TorqueSlipPin, isNamed: boolean): ChartPoint {
  const { midi, stringPosition, torqueNm, slipCentsPerYear, slipU } = pin;
  const name = texts.torque.desk.pin(formatNote(midi), texts.common.stringPosition[stringPosition] ?? '');
  return {
    x: torqueNm,
    y: slipCentsPerYear,
    low: slipCentsPerYear - BAR_SIGMAS * slipU,
    high: slipCentsPerYear + BAR_SIGMAS * slipU,
    detail: texts.torque.slip.detail(name, formatTorque(torqueNm), formatCents(slipCentsPerYear, slipU)),
    ...(isNamed && { tag: { text: formatNote(midi), stands: 'beside' as const } }),
  };
}

export function slipSheet(pins: readonly TorqueSlipPin[]): CsvSheet {
  return {
    columns: ['note', 'midi', 'string', 'torque_nm', 'slip_cents_per_year', 'slip_cents_per_year_u'],
    rows: pins.map(({ midi, stringPosition, torqueNm, slipCentsPerYear, slipU }) => [
      midiToName(midi),
      midi,
      stringPosition,
      torqueNm,
      slipCentsPerYear,
      slipU,
    ]),
  };
}
