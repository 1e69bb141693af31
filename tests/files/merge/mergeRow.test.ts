import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chosenRow } from '../../../src/files/merge/editRow.ts';
import {
  type KnownRow,
  mergeRow,
  NOTHING_KNOWN,
  openRivals,
  withOurFields,
} from '../../../src/files/merge/mergeRow.ts';
import { anySteps, type Known, liveThrough } from './histories.ts';

const RUNS = { numRuns: 1000, seed: 20260311 };

describe('merging what devices know of a row, over 1000 random histories each', () => {
  it('does not depend on who meets whom first, or how often', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const [a, b, c] = liveThrough(steps).devices as [Known, Known, Known];
        expect(mergeRow(a, b)).toEqual(mergeRow(b, a));
        expect(mergeRow(mergeRow(a, b), c)).toEqual(mergeRow(a, mergeRow(b, c)));
        expect(mergeRow(a, a)).toEqual(mergeRow(a, NOTHING_KNOWN));
        expect(mergeRow(mergeRow(a, b), b)).toEqual(mergeRow(a, b));
      }),
      RUNS,
    );
  });

  it('loses no edit but those whose successor’s author had seen them', () => {
    fc.assert(
      fc.property(anySteps, (steps) => {
        const { devices, seen, goneEdits, editCount } = liveThrough(steps);
        const all = devices.reduce<Known>(mergeRow, NOTHING_KNOWN);
        const covered = new Set([
          ...all.versions.flatMap(({ edit }) => [...(seen.get(edit) ?? [])]),
          ...all.gone.flatMap((stamp) => [...(goneEdits.get(JSON.stringify(Object.entries(stamp).sort())) ?? [])]),
        ]);
        // A deletion for good that a later one covers was itself seen by whoever made that: its edits count as seen.
        for (const edits of goneEdits.values()) for (const edit of edits) covered.add(edit);
        for (let edit = 1; edit <= editCount; edit++) expect(covered).toContain(edit);
      }),
      RUNS,
    );
  });
});

type Row = {
  id: string;
  stamp?: Record<string, number>;
  remark: string;
  owner?: string;
  isKept?: boolean;
  deletedAt?: string;
};
const only = (row: Row): KnownRow<Row> => ({ versions: [row], gone: [] });

describe('mergeRow', () => {
  it('takes the newer version', () => {
    const older = { id: 'r', stamp: { a: 1 }, remark: 'one' };
    const newer = { id: 'r', stamp: { a: 2 }, remark: 'two' };
    expect(mergeRow(only(older), only(newer)).versions).toEqual([newer]);
  });

  it('takes an edit over a row that no device has stamped', () => {
    const before = { id: 'r', remark: 'one' };
    const after = { id: 'r', stamp: { a: 1 }, remark: 'two' };
    expect(mergeRow(only(after), only(before)).versions).toEqual([after]);
  });

  it('keeps both of two versions that were edited apart, and of two that say they are the same edit and are not', () => {
    for (const stamps of [
      [
        { a: 2, b: 1 },
        { a: 1, b: 2 },
      ],
      [{ a: 1 }, { a: 1 }],
      [undefined, undefined],
    ]) {
      const [one, other] = stamps.map((stamp, index) => ({
        id: 'r',
        remark: `version ${index}`,
        ...(stamp && { stamp }),
      })) as unknown as [Row, Row];
      const merged = mergeRow(only(other), only(one));
      expect(merged.versions).toEqual([one, other]);
      expect(openRivals(merged)).toEqual([other]);
    }
  });

  it('shows an edit before a deletion made apart from it', () => {
    const deleted = { id: 'r', stamp: { a: 5 }, remark: '', deletedAt: '2026-01-01T00:00:00Z' };
    const edited = { id: 'r', stamp: { b: 1 }, remark: '' };
    expect(mergeRow(only(deleted), only(edited)).versions).toEqual([edited, deleted]);
  });

  it('has no open rival where only the kept flag differs', () => {
    const one = { id: 'r', stamp: { a: 1 }, remark: '', isKept: true };
    const other = { id: 'r', stamp: { b: 1 }, remark: '', isKept: false };
    expect(openRivals(mergeRow(only(one), only(other)))).toEqual([]);
  });

  it('does not bring back what was deleted for good, but what was edited since', () => {
    const gone: KnownRow<Row> = { versions: [], gone: [{ a: 2 }] };
    expect(mergeRow(gone, only({ id: 'r', stamp: { a: 1 }, remark: '' })).versions).toEqual([]);
    const later = { id: 'r', stamp: { a: 1, b: 1 }, remark: '' };
    expect(mergeRow(gone, only(later)).versions).toEqual([later]);
  });

  it('ends the rivalry once somebody has chosen', () => {
    const rivals = mergeRow(
      only({ id: 'r', stamp: { a: 1 }, remark: 'one' }),
      only({ id: 'r', stamp: { b: 1 }, remark: 'two' }),
    );
    const chosen = chosenRow(rivals, { ...rivals.versions[1]!, remark: 'both' }, 'c');
    expect(chosen.versions).toEqual([{ id: 'r', stamp: { a: 1, b: 1, c: 1 }, remark: 'both' }]);
    expect(mergeRow(rivals, chosen)).toEqual(chosen);
  });

  it('takes no owner away where an archive left owners out', () => {
    const ours = only({ id: 'r', stamp: { a: 1 }, remark: '', owner: 'Ada' });
    const theirs = withOurFields({ id: 'r', stamp: { a: 1, b: 1 }, remark: 'edited' } as Row, ours, ['owner']);
    expect(mergeRow(ours, only(theirs)).versions).toEqual([
      { id: 'r', stamp: { a: 1, b: 1 }, remark: 'edited', owner: 'Ada' },
    ]);
  });
});
