import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import type { ScaleFigures } from '../../stringing/scale/analyseScale.ts';

/** A schedule that is compared: its rows and what follows from them. */
export type Strung = { readonly name: string; readonly rows: readonly ScheduleRow[]; readonly scale: ScaleFigures };
