/** The rows of a stringing schedule: one a note, from the lowest up. Every operation gives new rows and leaves the old ones as they were. */
import { type Compass, notesOf } from '../../piano/compass.ts';
import type { ScheduleRow } from '../../piano/stringingRecords.ts';
import { breaksAfter } from '../../piano/surveyScope.ts';

/** Rows that a schedule holds, ascending by note. */
export type ScheduleRows = readonly ScheduleRow[];

export function emptyRow(midi: number): ScheduleRow {
  return {
    midi,
    stringCount: null,
    speakingLengthMm: null,
    wireDiameterMm: null,
    coreDiameterMm: null,
    wrap: null,
    wireGrade: null,
    bridge: null,
    interpolated: [],
  };
}

export function emptySchedule(compass: Compass): ScheduleRow[] {
  return notesOf(compass).map(emptyRow);
}

/** A string counts as wound as soon as a wrap or a core is given. */
export function isWound(row: Pick<ScheduleRow, 'wrap' | 'coreDiameterMm'>): boolean {
  return row.wrap !== null || row.coreDiameterMm !== null;
}

/** What is known of the instrument besides its schedule. */
export type KnownBreaks = { readonly bassBridgeTopMidi?: number | null; readonly strutsAfterMidi?: readonly number[] };

/**
 * Notes after which a new section begins: where the bridge changes, where wound wire ends, after a known bass bridge's top and after
 * the plate's struts. In rising order, each once.
 */
export function scheduleBreaks(rows: ScheduleRows, known: KnownBreaks = {}): number[] {
  const first = rows[0];
  const last = rows.at(-1);
  if (!first || !last) return [];
  const changes = rows.filter((row, index) => {
    const next = rows[index + 1];
    return next !== undefined && isBreak(row, next);
  });
  return breaksAfter({
    compass: { lowestMidi: first.midi, highestMidi: last.midi },
    bassBridgeTopMidi: known.bassBridgeTopMidi ?? null,
    strutsAfterMidi: [...changes.map(({ midi }) => midi), ...(known.strutsAfterMidi ?? [])],
  });
}

function isBreak(row: ScheduleRow, next: ScheduleRow): boolean {
  const changesBridge = row.bridge !== null && next.bridge !== null && row.bridge !== next.bridge;
  const hasWire = row.wireDiameterMm !== null && next.wireDiameterMm !== null;
  return changesBridge || (hasWire && isWound(row) && !isWound(next));
}

/** Rows between breaks, from the lowest up. */
export function rowsBySection(rows: ScheduleRows, breaksAfterMidi: readonly number[]): ScheduleRow[][] {
  const ends = [...breaksAfterMidi, Number.POSITIVE_INFINITY];
  return ends
    .map((end, index) => rows.filter(({ midi }) => midi <= end && midi > (ends[index - 1] ?? Number.NEGATIVE_INFINITY)))
    .filter((section) => section.length > 0);
}
