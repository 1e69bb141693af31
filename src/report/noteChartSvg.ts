/** A chart along the compass: one mark a string, bars of two standard uncertainties, and where bass bridge and struts break the row. */
import { type Compass, notesOf } from '../piano/compass.ts';
import { formatNote, formatNumber, formatPower } from '../piano/format.ts';
import type { StringPosition } from '../piano/reading.ts';
import { breaksAfter, type RowBreaks } from '../piano/surveyScope.ts';
import { element, type PageElement } from './pageTree.ts';
import { roundTicks, type Ticks } from './roundTicks.ts';
import { INK, line, type Point, px, RULE, SOFT, text } from './svgParts.ts';

export type ChartedString = {
  readonly midi: number;
  readonly stringPosition: StringPosition;
  readonly value: number;
  readonly standardUncertainty: number;
  /** Drawn as a filled triangle. */
  readonly isMarked?: boolean;
};

export type NoteChart = {
  readonly title: string;
  readonly strings: readonly ChartedString[];
  /** A course that the strings are seen against, by note. */
  readonly course?: readonly { readonly midi: number; readonly value: number }[];
  readonly row: RowBreaks;
  /** Values above zero, drawn by their powers of ten. */
  readonly isLog?: boolean;
};

const WIDTH = 720;
const HEIGHT = 168;
const LEFT = 58;
const RIGHT = 708;
const TOP = 26;
const BOTTOM = 146;
const MARK = '#145069';
const MARKED = '#98281f';
const COURSE = '#9a5b00';
const REACH_SIGMAS = 2;
/** Strings of a note stand side by side. */
const STRING_SHIFT = 0.25;

/** @param chart with at least one string */
export function noteChartSvg({ title, strings, course = [], row, isLog = false }: NoteChart): PageElement {
  const onScale = (value: number) => (isLog ? Math.log10(Math.max(value, 1e-12)) : value);
  const reach = (one: ChartedString): [number, number] => ends(one, isLog);
  const all = [...strings.flatMap(reach), ...course.map(({ value }) => value)].map(onScale);
  const ticks = roundTicks(isLog ? all : [0, ...all], 5);
  const x = xOf(row.compass);
  const y = (value: number) => BOTTOM - ((BOTTOM - TOP) * (onScale(value) - ticks.low)) / (ticks.high - ticks.low);
  const point = (one: ChartedString): Point => ({ x: x(one.midi + shiftOf(one)), y: y(one.value) });
  const bars = strings.map((one) => {
    const [low, high] = reach(one);
    return `M${px(point(one).x)} ${px(y(low))}V${px(y(high))}`;
  });
  const plain = strings.filter(({ isMarked }) => !isMarked).map(point);
  const marked = strings.filter(({ isMarked }) => isMarked).map(point);
  return element(
    'svg',
    { ...SVG, viewBox: `0 0 ${WIDTH} ${HEIGHT}`, 'aria-label': title },
    text({ x: LEFT, y: 14 }, title, { 'font-weight': 600 }),
    grid(ticks, isLog),
    breaks(row, x),
    notes(row.compass, x),
    element('path', { d: bars.join(''), stroke: SOFT, fill: 'none' }),
    course.length > 1 &&
      line(
        course.map(({ midi, value }) => ({ x: x(midi), y: y(value) })),
        COURSE_LOOK,
      ),
    plain.length > 0 && element('path', { d: plain.map(discPath).join(''), fill: MARK }),
    marked.length > 0 && element('path', { d: marked.map(trianglePath).join(''), fill: MARKED }),
  );
}

const SVG = {
  xmlns: 'http://www.w3.org/2000/svg',
  class: 'course',
  role: 'img',
  'font-family': 'inherit',
  'font-size': 11,
  fill: INK,
};
const COURSE_LOOK = { stroke: COURSE, 'stroke-width': 1.4, 'stroke-dasharray': '5 3' };

/** Where values are drawn by their powers, the bar reaches as far down as up in ratio. */
function ends({ value, standardUncertainty }: ChartedString, isLog: boolean): [number, number] {
  const reach = REACH_SIGMAS * standardUncertainty;
  if (!isLog) return [value - reach, value + reach];
  const ratio = Math.exp(reach / value);
  return [value / ratio, value * ratio];
}

function shiftOf({ stringPosition }: ChartedString): number {
  return stringPosition === 0 ? 0 : (stringPosition - 2) * STRING_SHIFT;
}

function xOf({ lowestMidi, highestMidi }: Compass): (midi: number) => number {
  return (midi) => LEFT + ((RIGHT - LEFT) * (midi - lowestMidi + 0.5)) / (highestMidi - lowestMidi + 1);
}

function grid(ticks: Ticks, isLog: boolean) {
  const shown = isLog ? ticks.values.filter(Number.isInteger) : ticks.values;
  const label = (value: number) =>
    isLog ? formatPower(10 ** value) : formatNumber(value, ticks.step < 0.1 ? 2 : ticks.step < 1 ? 1 : 0);
  return shown.map((value) => {
    const at = BOTTOM - ((BOTTOM - TOP) * (value - ticks.low)) / (ticks.high - ticks.low);
    return [
      line(
        [
          { x: LEFT, y: at },
          { x: RIGHT, y: at },
        ],
        { stroke: value === 0 && !isLog ? SOFT : RULE },
      ),
      text({ x: LEFT - 6, y: at + 4 }, label(value), { 'text-anchor': 'end' }),
    ];
  });
}

function breaks(row: RowBreaks, x: (midi: number) => number) {
  return breaksAfter(row).map((midi) =>
    line(
      [
        { x: x(midi + 0.5), y: TOP },
        { x: x(midi + 0.5), y: BOTTOM },
      ],
      { stroke: SOFT, 'stroke-dasharray': '2 3' },
    ),
  );
}

const SEMITONES = 12;

/** The lowest note, each C that does not crowd it, and the highest. */
function notes(compass: Compass, x: (midi: number) => number) {
  const { lowestMidi, highestMidi } = compass;
  const named = notesOf(compass).filter(
    (midi) =>
      midi === lowestMidi ||
      midi === highestMidi ||
      (midi % SEMITONES === 0 && midi - lowestMidi > 3 && highestMidi - midi > 3),
  );
  return named.map((midi) => [
    line(
      [
        { x: x(midi), y: BOTTOM },
        { x: x(midi), y: BOTTOM + 4 },
      ],
      { stroke: SOFT },
    ),
    text({ x: x(midi), y: BOTTOM + 16 }, formatNote(midi), { 'text-anchor': 'middle' }),
  ]);
}

function discPath({ x, y }: Point): string {
  return `M${px(x - 2)} ${px(y)}a2 2 0 1 0 4 0a2 2 0 1 0-4 0`;
}

function trianglePath({ x, y }: Point): string {
  return `M${px(x - 3.6)} ${px(y - 2.8)}h7.2l-3.6 6.4Z`;
}
