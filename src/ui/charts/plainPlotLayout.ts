/** Where things stand in a plain drawing, in pixels. */

export type Place = { readonly x: number; readonly y: number };
export type PlotTick = { readonly at: number; readonly label: string };
type Range = { readonly low: number; readonly high: number };
export type Inner = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };

const LEFT = 48;
const BELOW = 40;
const STROKE_ROW = 14;

/** The field inside the axes. @param strokeRows rows of strokes above it */
export function innerOf(width: number, height: number, strokeRows: number): Inner {
  return { left: LEFT, right: width - 26, top: 8 + STROKE_ROW * strokeRows, bottom: height - BELOW };
}

/** From values to pixels, beyond the field too. */
export function placeIn({ left, right, top, bottom }: Inner, x: Range, y: Range) {
  const share = (value: number, { low, high }: Range) => (value - low) / (high - low);
  const round = (value: number) => Math.round(10 * value) / 10;
  return {
    x: (value: number) => round(left + (right - left) * share(value, x)),
    y: (value: number) => round(bottom - (bottom - top) * share(value, y)),
  };
}

/** A line through points; empty where there are none. */
export function pathOf(points: readonly Place[], place: ReturnType<typeof placeIn>): string {
  return points.length === 0 ? '' : `M${points.map(({ x, y }) => `${place.x(x)} ${place.y(y)}`).join('L')}`;
}

/** Ticks whose labels have room: one too near its left neighbour goes, but the last stays in place of those before it. */
export function uncrowded(ticks: readonly PlotTick[], at: (value: number) => number, leastPx: number): PlotTick[] {
  const kept: PlotTick[] = [];
  for (const tick of ticks) {
    const before = kept.at(-1);
    if (!before || at(tick.at) - at(before.at) >= leastPx) kept.push(tick);
    else if (tick === ticks.at(-1) && kept.length > 1) kept.splice(-1, 1, tick);
  }
  return kept;
}
