import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Take } from '../../../src/piano/instrument.ts';
import {
  anyReading,
  exampleInstrument,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from '../../records/exampleRecords.ts';
import { archiveOf, emptyRows, exampleRows, rowsOf } from './exampleArchive.ts';

describe('an archive', () => {
  it('gives back every row of every table as it was', async () => {
    const rows = exampleRows();
    expect(await rowsOf(await archiveOf(rows))).toEqual(rows);
  });

  it('gives back nothing of nothing', async () => {
    expect(await rowsOf(await archiveOf(emptyRows()))).toEqual(emptyRows());
  });

  it('gives back readings of every shape, to the last bit', async () => {
    const instrument = exampleInstrument();
    const visit = exampleVisit(instrument);
    const survey = exampleSurvey(visit);
    const anyTake = fc
      .record({ reading: anyReading, earlier: fc.array(anyReading, { maxLength: 2 }), isKept: fc.boolean() })
      .map(({ reading, earlier, isKept }) => takeOf(reading, earlier, isKept));
    function takeOf(reading: Take['reading'], earlier: Take['reading'][], isKept: boolean): Take {
      const take = exampleTake(survey, { reading, isKept });
      if (earlier.length === 0) return take;
      return { ...take, earlierReadings: earlier.map((one) => ({ reading: one, measured: null })) };
    }
    await fc.assert(
      fc.asyncProperty(fc.array(anyTake, { maxLength: 4 }), async (takes) => {
        const rows = { ...emptyRows(), instruments: [instrument], visits: [visit], surveys: [survey], takes };
        const back = await rowsOf(await archiveOf(rows));
        expect(back.takes.map(bits)).toEqual(takes.map(bits));
      }),
      { numRuns: 25, seed: 20260301 },
    );
  });

  it('gives back fields that no column has, and values that no column holds', async () => {
    const rows = exampleRows();
    const [instrument, other] = rows.instruments;
    const changed = [
      {
        ...instrument,
        kind: 'giraffe',
        compass: { lowestMidi: 20.5, highestMidi: 108, lowest: null },
        builtYear: 'about 1890',
        newField: { deep: [1, { a: -0, '@odd': 1 }], bytes: Uint8Array.of(0, 255), nothing: null },
        stamp: { phone: 3, tablet: 1 },
        deletedAt: '2026-01-01T00:00:00Z',
        deletionId: 'd',
      },
      { ...other, ownerName: '', remark: '\ud800 half', pinBlock: undefined },
    ];
    const back = await rowsOf(await archiveOf({ ...rows, instruments: changed as never }));
    expect(back.instruments).toStrictEqual(
      changed.map(({ pinBlock, ...rest }) => (pinBlock === undefined ? rest : { ...rest, pinBlock })),
    );
  });

  it('gives back any text', async () => {
    const rows = exampleRows();
    const [instrument] = rows.instruments;
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'binary' }),
        fc.constantFrom('', '=', '+', '-', '@', "'", "''", '\t', '\r', '\n', '"', ' ', '＝', '\ufeff'),
        async (text, start) => {
          const remark = start + text;
          const back = await rowsOf(
            await archiveOf({ ...emptyRows(), instruments: [{ ...instrument!, remark, ownerName: remark }] }),
          );
          expect(back.instruments[0]).toStrictEqual({ ...instrument, remark, ownerName: remark });
        },
      ),
      { numRuns: 30, seed: 20260302 },
    );
  });

  it('keeps rows whose instrument is missing, as unattached', async () => {
    const rows = exampleRows();
    const stray = exampleVisit(exampleInstrument());
    const strayTake = exampleTake(exampleSurvey(stray));
    const back = await rowsOf(
      await archiveOf({ ...rows, visits: [...rows.visits, stray], takes: [strayTake, ...rows.takes] }),
    );
    expect(back.visits).toEqual(rows.visits);
    expect(back.takes).toEqual(rows.takes);
    expect(back.unattached).toEqual([
      { table: 'visits', rowId: stray.id, row: stray },
      { table: 'takes', rowId: strayTake.id, row: strayTake },
    ]);
  });

  it('leaves names out where asked to', async () => {
    const rows = exampleRows();
    const bytes = await archiveOf(rows, { leaveOut: ['owners', 'visitors', 'sounds', 'photographs'] });
    const back = await rowsOf(bytes);
    const text = JSON.stringify(back);
    expect(text).not.toContain('Ada');
    expect(text).not.toContain('Lane');
    expect(back.visits.map(({ visitedBy }) => visitedBy)).toEqual(['', '']);
    expect(back.sounds).toEqual([]);
    expect(back.photographFiles).toEqual([]);
    expect(back.photographs).toEqual(rows.photographs);
    expect(back.takes).toEqual(rows.takes);
  });
});

/** Tells 0 from −0. */
function bits(value: unknown): unknown {
  return JSON.parse(
    JSON.stringify(value, (_, item) => (typeof item === 'number' ? (Object.is(item, -0) ? '-0' : String(item)) : item)),
  );
}
