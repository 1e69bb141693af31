/**
 * The chart of an instrument's pitch over the years as SVG: the same picture on the screen, on paper and in a file. What a line stands for
 * shows by its dashes and marks as well as by its colour, so that grey print loses nothing.
 */
import { formatNumber, formatSigned } from '../piano/format.ts';
import {
  type CourseLayout,
  type Frame,
  frameOf,
  LEFT,
  PART,
  PART_DASHES,
  type Panel,
  SPREAD,
  WHOLE,
  WIDE,
} from './courseLayout.ts';
import { courseLegend } from './courseLegend.ts';
import { element, type PageElement } from './pageTree.ts';
import type { CourseStep, Movement, PitchCourse } from './pitchCourse.ts';
import { roundTicks, type Ticks } from './roundTicks.ts';
import { disc, INK, line, lineThrough, type Point, RULE, SOFT, text, triangle } from './svgParts.ts';
import { type TimeAxis, timeAxis } from './timeAxis.ts';
import type { ReportWords } from './words.ts';

export type CoursePicture = {
  readonly course: PitchCourse;
  readonly partName: string | null;
  /** Work within the time shown. */
  readonly events: readonly { readonly on: string; readonly label: string }[];
  /** One sentence for those who do not see the picture. */
  readonly summary: string;
};

type Scale = (value: number) => number;

/** @param picture with at least one step */
export function pitchCourseSvg(
  { course, partName, events, summary }: CoursePicture,
  words: ReportWords,
  layout: CourseLayout = WIDE,
): PageElement {
  const { steps, humidity } = course;
  const frame = frameOf(layout, humidity.length > 0);
  const dates = [...steps.flatMap((step) => [step.fromDate, step.toDate]), ...humidity.map(({ on }) => on)];
  const axis = timeAxis(
    dates,
    { left: LEFT + 8, right: layout.right - 8, mostLabels: layout.mostLabels },
    words.language,
  );
  const ticks = centsTicks(steps);
  const y = scaleOf(ticks, frame.pitch);
  const runs = runsOf(steps);
  const size = { viewBox: `0 0 ${layout.width} ${frame.height}`, width: layout.width, height: frame.height };
  return element(
    'svg',
    { ...SVG, class: `course ${layout.name}`, ...size, role: 'img', 'aria-label': summary },
    courseLegend(partName, layout, words),
    grid(ticks, y, layout, (value) => (value === 0 ? '0' : formatSigned(value, ticks.step < 1 ? 1 : 0))),
    runs.map((run) => wholeRun(run, axis, y)),
    partName !== null && runs.map((run) => partRun(run, axis, y)),
    directions(ticks, frame.pitch, words),
    yearTicks(axis, frame),
    events.map((event) => eventMark(event, axis, frame, layout)),
    frame.humidity && humidityPanel(humidity, axis, frame.humidity, layout, words),
  );
}

const SVG = {
  xmlns: 'http://www.w3.org/2000/svg',
  'font-family': 'inherit',
  'font-size': 11,
  fill: INK,
};

function centsTicks(steps: readonly CourseStep[]): Ticks {
  const values = steps.flatMap(({ whole, part }) => [
    whole.lowCents,
    whole.highCents,
    ...(part ? [part.medianCents] : []),
  ]);
  return roundTicks([-2, 2, ...values], 6);
}

function scaleOf(ticks: Ticks, panel: Panel): Scale {
  return (value) => panel.bottom - ((panel.bottom - panel.top) * (value - ticks.low)) / (ticks.high - ticks.low);
}

function grid(ticks: Ticks, y: Scale, { right }: CourseLayout, label: (value: number) => string) {
  return ticks.values.map((value) => [
    line(
      [
        { x: LEFT, y: y(value) },
        { x: right, y: y(value) },
      ],
      { stroke: value === 0 ? SOFT : RULE },
    ),
    text({ x: LEFT - 6, y: y(value) + 4 }, label(value), { 'text-anchor': 'end' }),
  ]);
}

function directions({ low, high }: Ticks, { top, bottom }: Panel, { course }: ReportWords) {
  return [
    text({ x: 12, y: top - 8 }, course.cents, { fill: SOFT }),
    high > 0 && text({ x: LEFT + 6, y: top + 12 }, `↑ ${course.sharper}`, { fill: SOFT }),
    low < 0 && text({ x: LEFT + 6, y: bottom - 5 }, `↓ ${course.flatter}`, { fill: SOFT }),
  ];
}

function yearTicks({ ticks }: TimeAxis, { pitch, humidity }: Frame) {
  const bottoms = [pitch.bottom, ...(humidity ? [humidity.bottom] : [])];
  return ticks.map(({ x, label }) => [
    bottoms.map((bottom) =>
      line(
        [
          { x, y: bottom },
          { x, y: bottom + 4 },
        ],
        { stroke: SOFT },
      ),
    ),
    text({ x, y: Math.max(...bottoms) + 16 }, label, { 'text-anchor': 'middle' }),
  ]);
}

function eventMark(
  { on, label }: CoursePicture['events'][number],
  { at }: TimeAxis,
  frame: Frame,
  { right }: CourseLayout,
) {
  const x = at(on);
  const isRight = x > (LEFT + right) / 2;
  const bottom = (frame.humidity ?? frame.pitch).bottom;
  return [
    line(
      [
        { x, y: frame.pitch.top },
        { x, y: bottom },
      ],
      { stroke: INK, 'stroke-dasharray': '1 3' },
    ),
    text({ x: x + (isRight ? -4 : 4), y: frame.pitch.bottom - 18 }, label, {
      'text-anchor': isRight ? 'end' : 'start',
    }),
  ];
}

/** Steps that follow one another without a gap. */
function runsOf(steps: readonly CourseStep[]): CourseStep[][] {
  const runs: CourseStep[][] = [];
  for (const step of steps) {
    if (step.startsAnew) runs.push([step]);
    else runs.at(-1)?.push(step);
  }
  return runs;
}

/** The middle string, and the band in which four strings in five lie. */
function wholeRun(run: readonly CourseStep[], { at }: TimeAxis, y: Scale) {
  const start: Point = { x: at(run[0]?.fromDate ?? ''), y: y(0) };
  const through = (value: (movement: Movement) => number) =>
    run.map(({ toDate, whole }): Point => ({ x: at(toDate), y: y(value(whole)) }));
  const middle = through(({ medianCents }) => medianCents);
  const low = through(({ lowCents }) => lowCents);
  const high = through(({ highCents }) => highCents);
  return [
    element('path', { d: `${lineThrough([start, ...high, ...low.reverse()])}Z`, fill: SPREAD }),
    line([start, ...middle], { stroke: WHOLE, 'stroke-width': 1.8 }),
    middle.map((point) => disc(point, 3, { fill: WHOLE })),
  ];
}

/** Begins where the whole piano stood when these strings were first read. */
function partRun(run: readonly CourseStep[], { at }: TimeAxis, y: Scale) {
  const first = run.findIndex(({ part }) => part !== null);
  if (first === -1) return null;
  const start: Point = { x: at(run[first]?.fromDate ?? ''), y: y(run[first - 1]?.whole.medianCents ?? 0) };
  const marks = run.flatMap(({ toDate, part }): Point[] => (part ? [{ x: at(toDate), y: y(part.medianCents) }] : []));
  return [
    line([start, ...marks], { stroke: PART, 'stroke-width': 1.8, ...PART_DASHES }),
    marks.map((point) => triangle(point, PART)),
  ];
}

function humidityPanel(
  humidity: PitchCourse['humidity'],
  { at }: TimeAxis,
  panel: Panel,
  layout: CourseLayout,
  { course }: ReportWords,
) {
  const ticks = roundTicks([...humidity.map(({ humidityPct }) => humidityPct), 40, 50], 3);
  const y = scaleOf(ticks, panel);
  const points = humidity.map(({ on, humidityPct }): Point => ({ x: at(on), y: y(humidityPct) }));
  return [
    text({ x: LEFT, y: panel.top - 8 }, course.humidityTitle, { fill: SOFT }),
    grid(ticks, y, layout, (value) => formatNumber(value, 0)),
    line(points, { stroke: INK, 'stroke-width': 1.2 }),
    points.map((point) => disc(point, 2.4, { fill: '#ffffff', stroke: INK })),
  ];
}

/** The lowest and the highest median, for the sentence that stands in for the picture. */
export function rangeOfSteps(steps: readonly { readonly whole: Movement }[]): { lowCents: number; highCents: number } {
  const medians = steps.map(({ whole }) => whole.medianCents);
  return { lowCents: Math.min(...medians), highCents: Math.max(...medians) };
}
