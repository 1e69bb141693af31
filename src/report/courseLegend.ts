/** What the lines of the chart of an instrument's pitch stand for. */
import { type CourseLayout, LEFT, LEGEND_ROW, PART, PART_DASHES, SPREAD, WHOLE } from './courseLayout.ts';
import { element } from './pageTree.ts';
import { disc, line, type Point, px, text, triangle } from './svgParts.ts';
import type { ReportWords } from './words.ts';

/** About the width of a letter: enough to set the next sign beside the words. */
const LETTER_WIDTH = 5.6;

export function courseLegend(partName: string | null, { legendRows }: CourseLayout, { course }: ReportWords) {
  const second = LEFT + 48 + LETTER_WIDTH * course.wholePiano.length;
  const third = second + 40 + LETTER_WIDTH * course.spread.length;
  const place = (row: number, x: number): Point =>
    legendRows === 1 ? { x, y: 14 } : { x: LEFT, y: 14 + LEGEND_ROW * row };
  const [whole, spread, part] = [place(0, LEFT), place(1, second), place(2, third)];
  const sample = ({ x, y }: Point): Point[] => [
    { x, y: y - 4 },
    { x: x + 22, y: y - 4 },
  ];
  return [
    line(sample(whole), { stroke: WHOLE, 'stroke-width': 1.8 }),
    disc({ x: whole.x + 22, y: whole.y - 4 }, 3, { fill: WHOLE }),
    text({ x: whole.x + 31, y: whole.y }, course.wholePiano, {}),
    element('path', { d: `M${px(spread.x)} ${spread.y - 10}h16v12h-16Z`, fill: SPREAD }),
    text({ x: spread.x + (legendRows === 1 ? 22 : 31), y: spread.y }, course.spread, {}),
    partName !== null && [
      line(sample(part), { stroke: PART, 'stroke-width': 1.8, ...PART_DASHES }),
      triangle({ x: part.x + 22, y: part.y - 4 }, PART),
      text({ x: part.x + 31, y: part.y }, partName, {}),
    ],
  ];
}
