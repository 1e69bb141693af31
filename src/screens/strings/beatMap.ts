/** Where the signs of the map stand: notes across, a note's strings one under the other; a narrow page takes several rows of notes. */
import { type Compass, notesOf } from '../../piano/compass.ts';
import { formatNote } from '../../piano/format.ts';
import { midiToName } from '../../piano/note.ts';
import type { DeskRow } from './deskRows.ts';

export type MapCell = { readonly row: DeskRow; readonly x: number; readonly y: number };

export type MapBlock = {
  readonly key: string;
  readonly top: number;
  readonly ticks: readonly { readonly x: number; readonly label: string }[];
  /** Lines between two notes where the row of strings breaks. */
  readonly breaks: readonly number[];
  readonly endX: number;
  /** Heights of the strings' lines, of strings 1 to 3. */
  readonly stringY: readonly number[];
  readonly cells: readonly MapCell[];
};

export type BeatMapLayout = { readonly height: number; readonly blocks: readonly MapBlock[] };

export const MAP_LEFT = 22;
const RIGHT = 6;
const TOP = 8;
const STRING_HEIGHT = 22;
const AXIS_HEIGHT = 26;
const GAP = 10;
/** Narrower than this and signs run into each other. */
const LEAST_CELL = 10;
const BLOCK_HEIGHT = 3 * STRING_HEIGHT + AXIS_HEIGHT + GAP;

/** @param width in CSS pixels */
export function beatMapLayout(
  rows: readonly DeskRow[],
  compass: Compass,
  breaksAfterMidi: readonly number[],
  width: number,
): BeatMapLayout {
  const notes = notesOf(compass);
  const room = Math.max(LEAST_CELL * 12, width - MAP_LEFT - RIGHT);
  const blockCount = Math.ceil(notes.length / Math.floor(room / LEAST_CELL));
  const perBlock = Math.ceil(notes.length / blockCount);
  const cell = room / perBlock;
  const blocks = Array.from({ length: blockCount }, (_, index) => {
    const own = notes.slice(index * perBlock, (index + 1) * perBlock);
    return blockOf(own, rows, breaksAfterMidi, { cell, top: TOP + index * BLOCK_HEIGHT });
  });
  return { height: TOP + blockCount * BLOCK_HEIGHT, blocks };
}

function blockOf(
  notes: readonly number[],
  rows: readonly DeskRow[],
  breaksAfterMidi: readonly number[],
  { cell, top }: { readonly cell: number; readonly top: number },
): MapBlock {
  const [first = 0] = notes;
  const last = notes.at(-1) ?? first;
  const x = (midi: number) => MAP_LEFT + (midi - first + 0.5) * cell;
  const stringY = [0, 1, 2].map((string) => top + (string + 0.5) * STRING_HEIGHT);
  const isTick = (midi: number) => midiToName(midi).startsWith('C') && !midiToName(midi).includes('#');
  return {
    key: String(first),
    top,
    ticks: notes
      .filter((midi) => isTick(midi) || midi === first)
      .map((midi) => ({ x: x(midi), label: formatNote(midi) })),
    breaks: breaksAfterMidi.filter((midi) => midi >= first && midi < last).map((midi) => x(midi + 0.5)),
    endX: x(last + 0.5),
    stringY,
    cells: rows
      .filter(({ place }) => place.midi >= first && place.midi <= last)
      .map((row) => ({ row, x: x(row.place.midi), y: stringY[row.place.stringPosition - 1] ?? 0 })),
  };
}
