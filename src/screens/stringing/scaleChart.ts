/** A scale's figures as its chart along the compass wants them. */
import { formatInharmonicity, formatNote, formatNumber, formatPower, formatShare } from '../../piano/format.ts';
import { formatStress, formatTension } from '../../piano/formatStringing.ts';
import type { Instrument } from '../../piano/instrument.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { ScaleFigures } from '../../stringing/scale/analyseScale.ts';
import type { NoteFigures } from '../../stringing/scale/noteFigures.ts';
import { HIGH_SHARE, LOW_SHARE, VERY_HIGH_SHARE } from '../../stringing/scale/scaleCautions.ts';
import { isWound, scheduleBreaks } from '../../stringing/schedule/scheduleRows.ts';
import { breakMarks } from '../../ui/breakMarks.ts';
import type { ChartSymbolShape } from '../../ui/ChartSymbol.tsx';
import { logScale, roundScale, type Scale } from '../../ui/chartScale.ts';
import type { NoteBand } from '../../ui/NoteBandLayer.tsx';
import type { NoteMark, NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';

const words = texts.stringing.scale;

export type Drawn = 'tension' | 'noteTension' | 'stress' | 'breaking' | 'inharmonicity';
export const DRAWN: readonly Drawn[] = ['tension', 'noteTension', 'stress', 'breaking', 'inharmonicity'];

/** In the unit of the axis; null where it is not known. */
export function drawnFigure(note: NoteFigures, drawn: Drawn): number | null {
  switch (drawn) {
    case 'tension':
      return note.tensionN;
    case 'noteTension':
      return note.noteTensionN;
    case 'stress':
      return note.stressMpa;
    case 'breaking':
      return note.breakingShare === null ? null : 100 * note.breakingShare;
    case 'inharmonicity':
      return note.predictedB;
  }
}

export function drawnText(note: NoteFigures, drawn: Drawn): string {
  switch (drawn) {
    case 'tension':
      return formatTension(note.tensionN);
    case 'noteTension':
      return formatTension(note.noteTensionN);
    case 'stress':
      return formatStress(note.stressMpa);
    case 'breaking':
      return breakingText(note);
    case 'inharmonicity':
      return inharmonicityText(note);
  }
}

export function breakingText({ breakingShare }: NoteFigures): string {
  return breakingShare === null ? formatTension(null) : formatShare(breakingShare);
}

/** A wound string's figure is a lower bound. */
export function inharmonicityText({ predictedB, isWound: wound }: NoteFigures): string {
  const text = formatInharmonicity(predictedB);
  return wound && predictedB !== null ? words.atLeast(text) : text;
}

type Kind = 'plain' | 'wound' | 'interpolated' | 'jump';
const SHAPES: Readonly<Record<Kind, ChartSymbolShape>> = {
  plain: 'disc',
  wound: 'square',
  interpolated: 'ring',
  jump: 'triangle',
};

/** Notes by what they are, each kind with a sign of its own; empty kinds are left out. Steps are shown where a pull is drawn. */
export function scaleSeries(scale: ScaleFigures, drawn: Drawn): NoteSeries[] {
  const isPull = drawn === 'tension' || drawn === 'noteTension';
  const stepping = new Set(isPull ? scale.steps.filter((step) => step.standsOut).map((step) => step.toMidi) : []);
  const kindOf = (note: NoteFigures): Kind => {
    if (stepping.has(note.midi)) return 'jump';
    if (note.interpolated.length > 0) return 'interpolated';
    return note.isWound ? 'wound' : 'plain';
  };
  return (['plain', 'wound', 'interpolated', 'jump'] as const).flatMap((kind) => {
    const points = scale.notes.flatMap((note) => (kindOf(note) === kind ? pointOf(note, drawn) : []));
    const name = kind === 'wound' && drawn === 'inharmonicity' ? words.series.woundB : words.series[kind];
    return points.length > 0 ? [{ name, shape: SHAPES[kind], points }] : [];
  });
}

export function pointOf(note: NoteFigures, drawn: Drawn): NotePoint[] {
  const y = drawnFigure(note, drawn);
  if (y === null) return [];
  const detail = words.detail(formatNote(note.midi), drawnText(note, drawn));
  return [{ x: note.midi, y, low: y, high: y, detail }];
}

/** @param values at least one */
export function drawnScale(values: readonly number[], drawn: Drawn): Scale {
  return drawn === 'inharmonicity' ? logScale(values) : roundScale(values);
}

export function drawnTick(drawn: Drawn): (value: number) => string {
  return drawn === 'inharmonicity' ? formatPower : (value) => formatNumber(value, 0);
}

export function drawnBands(drawn: Drawn): NoteBand[] {
  if (drawn !== 'breaking') return [];
  const { bands } = words;
  return [
    { low: 0, high: 100 * LOW_SHARE, label: bands.low, isHatched: false },
    { low: 100 * HIGH_SHARE, high: 100 * VERY_HIGH_SHARE, label: bands.high, isHatched: false },
    { low: 100 * VERY_HIGH_SHARE, high: null, label: bands.veryHigh, isHatched: true },
  ];
}

/** Struts and the end of the bass bridge as the instrument has them, and further breaks that the schedule shows. */
export function scaleMarks(instrument: Instrument, rows: readonly ScheduleRow[]): NoteMark[] {
  const known = breakMarks(instrument);
  const shown = scheduleBreaks(rows).filter((midi) => !known.some(({ x }) => x === midi + 0.5));
  return [...known, ...shown.map((midi) => ({ x: midi + 0.5, label: breakLabel(rows, midi) }))].sort(
    (a, b) => a.x - b.x,
  );
}

function breakLabel(rows: readonly ScheduleRow[], midi: number): string {
  const [row, next] = [midi, midi + 1].map((one) => rows.find((other) => other.midi === one));
  const endsWound = row !== undefined && next !== undefined && isWound(row) && !isWound(next);
  return endsWound ? words.breakMarks.wound : words.breakMarks.bridge;
}
