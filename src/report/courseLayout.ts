/** Where the parts of the chart of an instrument's pitch stand, and how its lines look. */

export const WHOLE = '#145069';
export const SPREAD = '#cfdde2';
export const PART = '#9a5b00';
export const PART_DASHES = { 'stroke-dasharray': '5 3' };

/** Paper and wide screens, or a phone held upright, where the same letters need more room beside a smaller picture. */
export type CourseLayout = {
  readonly name: 'wide' | 'narrow';
  readonly width: number;
  readonly right: number;
  readonly legendRows: 1 | 3;
  readonly mostLabels: number;
};

export const WIDE: CourseLayout = { name: 'wide', width: 720, right: 706, legendRows: 1, mostLabels: 12 };
export const NARROW: CourseLayout = { name: 'narrow', width: 380, right: 372, legendRows: 3, mostLabels: 6 };

export const LEFT = 58;
export const LEGEND_ROW = 16;
const PITCH_HEIGHT = 132;
const HUMIDITY_HEIGHT = 44;

export type Panel = { readonly top: number; readonly bottom: number };

export type Frame = { readonly pitch: Panel; readonly humidity: Panel | null; readonly height: number };

export function frameOf({ legendRows }: CourseLayout, hasHumidity: boolean): Frame {
  const top = LEGEND_ROW * (legendRows + 1);
  const pitch = { top, bottom: top + PITCH_HEIGHT };
  if (!hasHumidity) return { pitch, humidity: null, height: pitch.bottom + 20 };
  const humidity = { top: pitch.bottom + 26, bottom: pitch.bottom + 26 + HUMIDITY_HEIGHT };
  return { pitch, humidity, height: humidity.bottom + 20 };
}
