/** What the two charts of a survey have in common: points in two kinds, and a curve that may break between bridges. */
import { formatNote } from '../../piano/format.ts';
import type { StringPosition } from '../../piano/reading.ts';
import type { PointTag } from '../../ui/ChartSymbol.tsx';
import type { CurveNote, NoteCurve } from '../../ui/NoteCurveLayer.tsx';
import type { NotePoint, NoteSeries } from '../../ui/NotesChart.tsx';
import { texts } from '../../ui/texts.ts';

/** How many standard uncertainties bars and bands reach either way: nineteen of twenty. */
export const REACH_SIGMAS = 2;

/** The strings of a note stand this far apart along the axis, in notes. */
const STRING_SPACING = 0.25;

export function xOfString(midi: number, position: StringPosition): number {
  return midi + (position === 0 ? 0 : (position - 2) * STRING_SPACING);
}

/** Ordinary notes as discs; those that are called as triangles, under their own name. */
export function twoKinds<Note>(
  notes: readonly Note[],
  isCalled: (note: Note) => boolean,
  point: (note: Note) => NotePoint,
  calledName: string,
): NoteSeries[] {
  const called = notes.filter(isCalled).map(point);
  const ordinary = notes.filter((note) => !isCalled(note)).map(point);
  return [
    { name: texts.charts.measured, shape: 'disc' as const, points: ordinary },
    { name: calledName, shape: 'triangle' as const, points: called },
  ].filter(({ points }) => points.length > 0);
}

/** The note's name on the side of its sign that the curve does not pass. */
export function awayFromCurve(midi: number, ratioToCurve: number): PointTag {
  return { text: formatNote(midi), stands: ratioToCurve > 1 ? 'above' : 'below' };
}

/** The curve in one stretch, or in two where the bass bridge ends. */
export function stretchesOf(notes: readonly CurveNote[], breakAfterMidi: number | null): CurveNote[][] {
  if (breakAfterMidi === null) return [[...notes]];
  const below = notes.filter(({ x }) => x <= breakAfterMidi);
  const above = notes.filter(({ x }) => x > breakAfterMidi);
  return [below, above].filter((stretch) => stretch.length > 0);
}

/** Everything that the axis must take in: points with their bars, and the curve; the band may be cut off. */
export function valuesDrawn(series: readonly NoteSeries[], curve: NoteCurve): number[] {
  const points = series.flatMap((one) => one.points.flatMap(({ y, low, high }) => [y, low, high]));
  return [...points, ...curve.stretches.flatMap((notes) => notes.map(({ y }) => y))];
}
