/** Torque of pins as the chart along the block and its table want it. */
import { formatNumber } from '../../piano/format.ts';
import { formatMultiple, formatTorqueInBoth } from '../../piano/formatTorque.ts';
import { nmToInchPounds } from '../../piano/torque.ts';
import { TORQUE_BANDS } from '../../stability/torqueBands.ts';
import type { PinTorque } from '../../stability/torquePins.ts';
import type { ChartSymbolShape } from '../../ui/ChartSymbol.tsx';
import type { NoteBand } from '../../ui/NoteBandLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';
import { pinName } from './deskWords.ts';
import { type PinLoads, pullMultiple } from './pinLoads.ts';
import { isSamePin, type PinAddress } from './pinRound.ts';

const words = texts.torque.over;

export type Drawn = 'torque' | 'ratio';

/** The pins of a note stand this far apart along the axis, in notes. */
const PIN_SPACING = 0.25;

export type ShownPins = {
  readonly pins: readonly PinTorque[];
  /** An earlier reading for comparison. */
  readonly before: { readonly name: string; readonly pins: readonly PinTorque[] } | null;
  /** Called slipping by the years of readings; empty while those are not judged. */
  readonly slipping: readonly PinAddress[];
};

/** Steady pins, slipping ones and an earlier visit's, each with a sign of its own; empty series are left out. */
export function torqueSeries({ pins, before, slipping }: ShownPins, drawn: Drawn, loads: PinLoads): NoteSeries[] {
  const isSlipping = (pin: PinTorque) => slipping.some((other) => isSamePin(other, pin));
  const all: readonly (readonly [string, ChartSymbolShape, readonly PinTorque[]])[] = [
    ...(before ? ([[before.name, 'ring', before.pins]] as const) : []),
    [words.pins, 'disc', pins.filter((pin) => !isSlipping(pin))],
    [words.slipping, 'triangle', pins.filter(isSlipping)],
  ];
  return all.flatMap(([name, shape, own]) => {
    const points = own.flatMap((pin) => pointOf(pin, drawn, loads));
    return points.length > 0 ? [{ name, shape, points }] : [];
  });
}

function pointOf(pin: PinTorque, drawn: Drawn, loads: PinLoads): NotePoint[] {
  const multiple = pullMultiple(pin.torqueNm, loads.of(pin.midi));
  const y = drawn === 'torque' ? pin.torqueNm : multiple;
  if (y === null) return [];
  const shift = pin.stringPosition === 0 ? 0 : (pin.stringPosition - 2) * PIN_SPACING;
  const times = multiple === null ? '' : `, ${formatMultiple(multiple)}`;
  return [
    { x: pin.midi + shift, y, low: y, high: y, detail: `${pinName(pin)}: ${formatTorqueInBoth(pin.torqueNm)}${times}` },
  ];
}

/** Bands of common practice for torques; for multiples the string's own pull, below which nothing can hold. */
export function torqueBandsOf(drawn: Drawn): NoteBand[] {
  if (drawn === 'ratio') return [{ low: 0, high: 1, label: words.floor, isHatched: true }];
  return TORQUE_BANDS.map(({ name, fromNm, toNm }) => ({
    low: fromNm,
    high: toNm,
    label: words.band(texts.torque.bands[name], inchPoundRange(fromNm, toNm)),
    isHatched: name === 'below holding' || name === 'doubtful',
  }));
}

function inchPoundRange(fromNm: number, toNm: number | null): string {
  const text = (torqueNm: number) => formatNumber(nmToInchPounds(torqueNm), 0);
  if (toNm === null) return words.bandAbove(text(fromNm));
  return fromNm === 0 ? words.bandBelow(text(toNm)) : `${text(fromNm)}–${text(toNm)}`;
}
