/** The change between two visits as its two charts want it. */
import { formatCents } from '../../piano/format.ts';
import type { SpanChange, StringAddress } from '../../stability/driftViews.ts';
import type { ChartSymbolShape } from '../../ui/ChartSymbol.tsx';
import type { NoteCurve } from '../../ui/NoteCurveLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';
import { SIGMAS } from './sigmas.ts';
import { positionName, positionsOf, stringNamer } from './stringNames.ts';

const SHAPES: readonly ChartSymbolShape[] = ['disc', 'triangle', 'disc', 'square'];
/** The strings of a note stand this far apart along the axis, in notes. */
const STRING_SPACING = 0.25;

export type StringFigure = StringAddress & { readonly value: number; readonly standardUncertainty: number };

/** One series for each string position that occurs. */
export function stringSeries(figures: readonly StringFigure[], format: (figure: StringFigure) => string): NoteSeries[] {
  const nameOf = stringNamer(figures);
  return positionsOf(figures).map((position) => ({
    name: positionName(position),
    shape: SHAPES[position] ?? 'disc',
    points: figures
      .filter((one) => one.stringPosition === position)
      .map((figure) => pointOf(figure, nameOf(figure), format)),
  }));
}

function pointOf(figure: StringFigure, name: string, format: (figure: StringFigure) => string): NotePoint {
  const { midi, stringPosition, value, standardUncertainty } = figure;
  const shift = stringPosition === 0 ? 0 : (stringPosition - 2) * STRING_SPACING;
  const reach = SIGMAS * standardUncertainty;
  const detail = `${name}: ${format(figure)}`;
  return { x: midi + shift, y: value, low: value - reach, high: value + reach, detail };
}

export function readSeries(changes: readonly SpanChange[]): NoteSeries[] {
  const figures = changes.map((change) => ({ ...change, value: change.cents, standardUncertainty: 0 }));
  return stringSeries(figures, ({ value }) => formatCents(value));
}

export function ownSeries(changes: readonly SpanChange[]): NoteSeries[] {
  const figures = changes.map((change) => ({
    ...change,
    value: change.ownCents,
    standardUncertainty: change.ownUncertaintyCents,
  }));
  return stringSeries(figures, ({ value, standardUncertainty }) => formatCents(value, standardUncertainty));
}

/** What season and whole instrument account for, in two stretches where the bass bridge is known; mean over a note's strings. */
export function wholeCurve(changes: readonly SpanChange[], bassBridgeTopMidi: number | null): NoteCurve {
  const midis = [...new Set(changes.map((change) => change.midi))].sort((a, b) => a - b);
  const stretches: { x: number; y: number; low: number; high: number }[][] = [];
  let before: number | undefined;
  for (const midi of midis) {
    const own = changes.filter((change) => change.midi === midi);
    const y = own.reduce((sum, change) => sum + change.wholeCents, 0) / own.length;
    const reach = (SIGMAS * own.reduce((sum, change) => sum + change.wholeUncertaintyCents, 0)) / own.length;
    const note = { x: midi, y, low: y - reach, high: y + reach };
    const isBroken =
      before === undefined || (bassBridgeTopMidi !== null && bassBridgeTopMidi >= before && bassBridgeTopMidi < midi);
    if (isBroken) stretches.push([note]);
    else stretches.at(-1)?.push(note);
    before = midi;
  }
  return { name: texts.stability.span.whole, stretches };
}
