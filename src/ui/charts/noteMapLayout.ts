/** Where the cells of a map of notes against visits stand. */

export type NoteMapLayout = {
  readonly left: number;
  readonly top: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly width: number;
  readonly height: number;
};

const LABEL_WIDTH = 76;
const MARK_HEIGHT = 34;
const AXIS_HEIGHT = 26;
const RIGHT = 12;
const MOST_CELL_HEIGHT = 26;
const LEAST_CELL_HEIGHT = 10;
const WANTED_HEIGHT = 380;

/** Few visits have high rows, many low ones; the notes always share the whole width. */
export function noteMapLayout(width: number, columnCount: number, rowCount: number): NoteMapLayout {
  const wanted = WANTED_HEIGHT / Math.max(1, rowCount);
  const cellHeight = Math.round(Math.min(MOST_CELL_HEIGHT, Math.max(LEAST_CELL_HEIGHT, wanted)));
  const cellWidth = Math.max(0, width - LABEL_WIDTH - RIGHT) / Math.max(1, columnCount);
  const height = MARK_HEIGHT + rowCount * cellHeight + AXIS_HEIGHT;
  return { left: LABEL_WIDTH, top: MARK_HEIGHT, cellWidth, cellHeight, width, height };
}

export type MapPlace = { readonly column: number; readonly row: number };

/** The cell at a point of the drawing; beside the cells, the nearest column with no row (-1); null where there are no cells. */
export function cellAt(
  layout: NoteMapLayout,
  x: number,
  y: number,
  columnCount: number,
  rowCount: number,
): MapPlace | null {
  if (columnCount === 0 || layout.cellWidth === 0) return null;
  const column = Math.min(columnCount - 1, Math.max(0, Math.floor((x - layout.left) / layout.cellWidth)));
  const row = Math.floor((y - layout.top) / layout.cellHeight);
  return { column, row: row >= 0 && row < rowCount ? row : -1 };
}

const LABEL_DISTANCE = 16;

/** Every how manyth row bears its date, so that they do not run into each other. */
export function rowLabelStep(layout: NoteMapLayout): number {
  return Math.max(1, Math.ceil(LABEL_DISTANCE / layout.cellHeight));
}

const TICK_WIDTH = 24;

/** Whether a tick of these columns has room beside the one before it; the first one always stands. */
export function hasRoom(ticked: readonly number[], index: number, cellWidth: number): boolean {
  let last: number | undefined;
  for (const column of ticked) {
    const stands = last === undefined || (column - last) * cellWidth >= TICK_WIDTH;
    if (column === index) return stands;
    if (stands) last = column;
  }
  return false;
}

/**
 * The outline of all cells that hold this level, as the data of an SVG path; empty where none does.
 * @param levels by column, then by row; null where there is no figure
 */
export function cellOutline<Level>(
  { left, top, cellWidth, cellHeight }: NoteMapLayout,
  levels: readonly (readonly (Level | null)[])[],
  level: Level,
): string {
  const cells = levels.flatMap((rows, column) =>
    rows.flatMap((own, row) => {
      if (own !== level) return [];
      const [x, y] = [(left + column * cellWidth).toFixed(2), (top + row * cellHeight).toFixed(2)];
      return [`M${x} ${y}h${cellWidth.toFixed(2)}v${cellHeight}h-${cellWidth.toFixed(2)}z`];
    }),
  );
  return cells.join('');
}
