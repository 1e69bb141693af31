/** One job as the plot of spans draws it: when it was watched, and what came of it. Years since the work. */
export type SpanEnd = 'holding' | 'watch' | 'giving way';

export type SpanRow = {
  readonly key: string;
  readonly name: string;
  /** What the figure beside the bar says. */
  readonly detail: string;
  readonly fromYears: number;
  readonly toYears: number;
  readonly end: SpanEnd;
};

const ROW_HEIGHT_PX = 46;
const AXIS_HEIGHT_PX = 56;

/** Of the picture of these rows. */
export function spansHeightPx(rows: readonly SpanRow[]): number {
  return rows.length * ROW_HEIGHT_PX + AXIS_HEIGHT_PX;
}
