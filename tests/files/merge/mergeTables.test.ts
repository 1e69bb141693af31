import { describe, expect, it } from 'vitest';
import { differencesOf } from '../../../src/files/merge/differences.ts';
import { settleKept } from '../../../src/files/merge/keptTakes.ts';
import { mergeTables, NO_RECORDS, type RecordTables } from '../../../src/files/merge/recordTables.ts';
import type { RowVersion } from '../../../src/files/merge/rowVersion.ts';
import { exampleInstrument, exampleSurvey, exampleTake, exampleVisit } from '../../records/exampleRecords.ts';

const instrument = exampleInstrument();
const visit = exampleVisit(instrument);
const survey = exampleSurvey(visit);
const now = { now: '2026-03-02T00:00:00Z' };
const take = (id: string, recordedAt: string, fields: object = {}) =>
  ({ ...exampleTake(survey, { midi: 60, stringPosition: 1 }), id, recordedAt, ...fields }) as never as RowVersion & {
    isKept: boolean;
  };
const holding = (rows: Record<string, RowVersion[]>): RecordTables => ({ ...NO_RECORDS, rows });
const keptOf = (records: RecordTables) =>
  Object.fromEntries((records.rows.takes ?? []).map((row) => [row.id, (row as unknown as { isKept: boolean }).isKept]));

describe('mergeTables', () => {
  it('puts the rows of both together', () => {
    const other = exampleInstrument();
    const merged = mergeTables(
      holding({ instruments: [instrument] }),
      holding({ instruments: [other], visits: [visit] }),
      now,
    );
    expect(merged).toEqual({ rows: { instruments: [instrument, other], visits: [visit] }, rivals: [], gone: [] });
  });

  it('keeps what was changed apart as a rival that both sides would call the same', () => {
    const one = { ...instrument, remark: 'one', stamp: { a: 1 } };
    const two = { ...instrument, remark: 'two', stamp: { b: 1 } };
    const merged = mergeTables(holding({ instruments: [one] }), holding({ instruments: [two] }), now);
    expect(merged.rows.instruments).toEqual([one]);
    expect(merged.rivals).toMatchObject([
      { table: 'instruments', rowId: instrument.id, instrumentId: instrument.id, foundAt: now.now, row: two },
    ]);
    const later = mergeTables(holding({ instruments: [two] }), holding({ instruments: [one] }), {
      now: '2027-01-01T00:00:00Z',
    });
    expect(mergeTables(later, merged, now)).toEqual(merged);
    expect(mergeTables(merged, later, now)).toEqual(merged);
  });

  it('ends a rivalry when a choice comes', () => {
    const rival = (stamp: object, remark: string) =>
      holding({ instruments: [{ ...instrument, remark, stamp } as RowVersion] });
    const merged = mergeTables(rival({ a: 1 }, 'one'), rival({ b: 1 }, 'two'), now);
    const chosen = rival({ a: 1, b: 1, c: 1 }, 'both');
    expect(mergeTables(merged, chosen, now)).toEqual(chosen);
  });

  it('does not bring back what was deleted for good, and keeps deletions that knew nothing of each other', () => {
    const mark = (device: string) => ({
      id: `visits/${visit.id}`,
      instrumentId: null,
      table: 'visits',
      rowId: visit.id,
      stamp: { [device]: 1 },
      deletedAt: '2026-01-01T00:00:00Z',
    });
    const merged = mergeTables({ ...NO_RECORDS, gone: [mark('b')] }, { ...NO_RECORDS, gone: [mark('a')] }, now);
    expect(merged.gone).toEqual([mark('a'), { ...mark('b'), id: `visits/${visit.id}/2` }]);
    expect(mergeTables(merged, holding({ visits: [{ ...visit, stamp: { b: 1 } } as RowVersion] }), now)).toEqual(
      merged,
    );
    const both = { ...visit, stamp: { a: 1, b: 1 } } as RowVersion;
    expect(mergeTables(merged, holding({ visits: [both] }), now).rows.visits).toEqual([both]);
  });

  it('leaves the owner where the other side left owners out', () => {
    const ours = { ...instrument, ownerName: 'Ada', stamp: { a: 1 } };
    const theirs = { ...instrument, remark: 'new', stamp: { a: 1, b: 1 } };
    const merged = mergeTables(holding({ instruments: [ours] }), holding({ instruments: [theirs] }), {
      ...now,
      leftOut: ['owners'],
    });
    expect(merged).toEqual(holding({ instruments: [{ ...theirs, ownerName: 'Ada' } as RowVersion] }));
  });
});

describe('kept takes', () => {
  it('are one at most of each note and string after two people’s takes met: the newest', () => {
    const merged = mergeTables(
      holding({ takes: [take('x', '2026-01-01T10:00')] }),
      holding({ takes: [take('y', '2026-01-01T11:00')] }),
      now,
    );
    expect(keptOf(merged)).toEqual({ x: false, y: true });
    expect(merged.rivals).toEqual([]);
  });

  it('come back where the take that won is deleted, in whatever order that is heard of', () => {
    const a = holding({ takes: [take('x', '2026-01-01T10:00')] });
    const b = holding({ takes: [take('y', '2026-01-01T11:00')] });
    const c = holding({
      takes: [take('y', '2026-01-01T11:00', { stamp: { c: 1 }, deletedAt: '2026-02-01T00:00:00Z' })],
    });
    const one = mergeTables(mergeTables(a, b, now), c, now);
    expect(one).toEqual(mergeTables(a, mergeTables(b, c, now), now));
    expect(keptOf(one).x).toBe(true);
  });

  it('stay set aside where somebody set them aside after the merge', () => {
    const merged = settleKept([take('x', '1'), take('y', '2')] as never[]) as unknown as (RowVersion & {
      isKept: boolean;
    })[];
    const aside = merged.map((row) => ({ ...row, isKept: false, stamp: { a: 1 } }));
    expect(keptOf(holding({ takes: settleKept(aside as never[]) as never[] }))).toEqual({ x: false, y: false });
  });

  it('work on rows as the records pack them', () => {
    const packed = (id: string, recordedAt: string) => ({
      id,
      surveyId: 's',
      midi: 60,
      stringPosition: 1,
      recordedAt,
      keptFlag: 1 as const,
    });
    expect(settleKept([packed('x', '1'), packed('y', '2')]).map(({ keptFlag }) => keptFlag)).toEqual([0, 1]);
  });
});

it('differencesOf names each field that differs, and neither stamps nor kept flags', () => {
  const one = { ...instrument, stamp: { a: 1 }, isKept: true, remark: 'one', strutsAfterMidi: [52] };
  const other = {
    ...instrument,
    stamp: { b: 1 },
    compass: { ...instrument.compass, highestMidi: 108 },
    ownerName: 'Ada',
    strutsAfterMidi: [52, 60],
  };
  expect(differencesOf(one as RowVersion, other as RowVersion)).toEqual([
    { path: ['compass', 'highestMidi'], one: 105, other: 108 },
    { path: ['ownerName'], one: undefined, other: 'Ada' },
    { path: ['remark'], one: 'one', other: '' },
    { path: ['strutsAfterMidi'], one: [52], other: [52, 60] },
  ]);
});
