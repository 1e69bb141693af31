/** What a map of notes and visits is given. */
import type { MapPlace } from './noteMapLayout.ts';

export type NoteMapColumn = {
  readonly key: string;
  /** What a screen reader says of the column. */
  readonly name: string;
  /** One figure for each row; null where there is none. */
  readonly values: readonly (number | null)[];
  /** Written under the column. */
  readonly tick?: string;
  readonly isFlagged: boolean;
  /** A line between this column and the next. */
  readonly endsSection: boolean;
};
export type NoteMapProps = {
  readonly label: string;
  readonly columns: readonly NoteMapColumn[];
  /** From top to bottom. */
  readonly rowNames: readonly string[];
  readonly step: number;
  readonly chosenKey: string | null;
  readonly onChoose: (key: string) => void;
  /** Stretches of columns with a bracket above them. */
  readonly brackets: readonly { readonly fromKey: string; readonly toKey: string }[];
  /** What stands in the line below for a cell. */
  readonly cellText: (place: MapPlace) => string;
  readonly hint: string;
};
