/** Random histories of a few devices that edit the same rows, merge with one another and know who saw what. */
import fc from 'fast-check';
import { chosenRow, editedRow, goneStamp } from '../../../src/files/merge/editRow.ts';
import { type KnownRow, mergeRow, NOTHING_KNOWN } from '../../../src/files/merge/mergeRow.ts';
import type { RowVersion } from '../../../src/files/merge/rowVersion.ts';

/** Carries the edits that its author had seen, which no program would. */
export type TestRow = RowVersion & { readonly id: 'row'; readonly edit: number; readonly remark: string };
export type Known = KnownRow<TestRow>;

type Step =
  | { readonly kind: 'edit' | 'delete' | 'purge'; readonly device: number; readonly remark: string }
  | { readonly kind: 'choose'; readonly device: number; readonly index: number }
  | { readonly kind: 'merge'; readonly device: number; readonly from: number };

export const DEVICE_COUNT = 4;
const device = fc.nat({ max: DEVICE_COUNT - 1 });

export const anySteps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    {
      weight: 5,
      arbitrary: fc.record({
        kind: fc.constantFrom('edit' as const, 'edit' as const, 'delete' as const),
        device,
        remark: fc.constantFrom('x', 'y'),
      }),
    },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('purge' as const), device, remark: fc.constant('') }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('choose' as const), device, index: fc.nat({ max: 3 }) }) },
    { weight: 5, arbitrary: fc.record({ kind: fc.constant('merge' as const), device, from: device }) },
  ),
  { minLength: 1, maxLength: 20 },
);

export type History = {
  /** What each device knows at the end. */
  readonly devices: readonly Known[];
  /** For each edit, and each deletion for good, the edits that its author had before his eyes, itself included. */
  readonly seen: ReadonlyMap<number, ReadonlySet<number>>;
  readonly goneEdits: ReadonlyMap<string, ReadonlySet<number>>;
  readonly editCount: number;
};

export function liveThrough(steps: readonly Step[]): History {
  const devices: Known[] = Array.from({ length: DEVICE_COUNT }, () => NOTHING_KNOWN);
  const seen = new Map<number, Set<number>>();
  const goneEdits = new Map<string, Set<number>>();
  let edit = 0;
  const seenBy = (versions: readonly TestRow[]) =>
    new Set(versions.flatMap((version) => [...(seen.get(version.edit) ?? [])]));
  for (const step of steps) {
    const known = devices[step.device]!;
    const name = `device ${step.device}`;
    const [shown] = known.versions;
    if (step.kind === 'merge') devices[step.device] = mergeRow(known, devices[step.from]!);
    else if (step.kind === 'edit' || step.kind === 'delete') {
      if (step.kind === 'delete' && shown === undefined) continue;
      edit += 1;
      seen.set(edit, seenBy(shown ? [shown] : []).add(edit));
      const row: TestRow = {
        id: 'row',
        edit,
        remark: step.remark,
        ...(step.kind === 'delete' && { deletedAt: '2026-01-01T00:00:00Z' }),
      };
      devices[step.device] = editedRow(known, row, name);
    } else if (step.kind === 'choose') {
      const choice = known.versions[step.index];
      if (choice === undefined) continue;
      edit += 1;
      seen.set(edit, seenBy(known.versions).add(edit));
      devices[step.device] = chosenRow(known, { ...choice, edit }, name);
    } else if (shown !== undefined) {
      const stamp = goneStamp(known, name);
      goneEdits.set(JSON.stringify(Object.entries(stamp).sort()), seenBy(known.versions));
      devices[step.device] = { versions: [], gone: [...known.gone, stamp] };
    }
  }
  return { devices, seen, goneEdits, editCount: edit };
}
