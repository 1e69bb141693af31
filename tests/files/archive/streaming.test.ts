import { afterEach, describe, expect, it, vi } from 'vitest';
import { ArchiveFault } from '../../../src/files/archive/archiveFault.ts';
import { checkArchive } from '../../../src/files/archive/checkArchive.ts';
import { openArchive } from '../../../src/files/archive/readArchive.ts';
import { type WriteOptions, writeArchive } from '../../../src/files/archive/writeArchive.ts';
import { type ByteSource, bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import type { Take } from '../../../src/piano/instrument.ts';
import {
  exampleInstrument,
  examplePartial,
  exampleReading,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from '../../records/exampleRecords.ts';
import { archiveOf, emptyRows, exampleRows, rowsOf, WRITTEN_AT } from './exampleArchive.ts';
import { joined } from './handZip.ts';

const instrument = exampleInstrument();
const visit = exampleVisit(instrument);
const survey = exampleSurvey(visit);
const take = exampleTake(survey);
const TAKES = 6000;

function* manyTakes(): Generator<Take> {
  for (let index = 0; index < TAKES; index++)
    yield { ...take, id: `take-${index}` as Take['id'], reading: readingWithDigits(index) };
}

/** With figures that compress no better than real ones. */
function readingWithDigits(index: number) {
  const digits = (number: number) => Math.abs(Math.sin(index * 7 + number));
  const partial = examplePartial(1, digits(1));
  return exampleReading({
    offsetCents: digits(2),
    f0Hz: digits(3),
    inharmonicityB: digits(4),
    lifeTimeS: digits(5),
    unisonStringsCents: [digits(6), digits(7), digits(8)],
    partials: [
      {
        ...partial,
        levelDbfs: digits(9),
        snrDb: digits(10),
        components: [
          {
            frequencyHz: digits(11),
            frequencyStandardUncertaintyHz: digits(12),
            levelDbfs: digits(13),
            decayTimeS: digits(14),
          },
        ],
      },
    ],
  });
}

const many = { instruments: [instrument], visits: [visit], surveys: [survey], takes: manyTakes };

async function writing(
  contents: Parameters<typeof writeArchive>[0],
  options: Partial<WriteOptions> = {},
  onPiece: (bytes: Uint8Array) => void = () => undefined,
) {
  const pieces: Uint8Array[] = [];
  const outcome = await writeArchive(contents, { ...WRITTEN_AT, ...options }, async (bytes) => {
    onPiece(bytes);
    pieces.push(bytes);
  }).catch((error: unknown) => error as ArchiveFault);
  return { outcome, bytes: joined(...pieces), pieces };
}

afterEach(() => vi.unstubAllGlobals());

describe('writing', () => {
  it('hands pieces on as it goes, and keeps no more of the takes than it has not handed on', async () => {
    let takenCount = 0;
    let largestGap = 0;
    let takenAtLastPiece = 0;
    function* counted(): Generator<Take> {
      for (const one of manyTakes()) {
        takenCount += 1;
        yield one;
      }
    }
    const { bytes } = await writing({ ...many, takes: counted }, {}, () => {
      largestGap = Math.max(largestGap, takenCount - takenAtLastPiece);
      takenAtLastPiece = takenCount;
    });
    expect(takenCount).toBe(3 * TAKES); // readings, partials, components; there are no beats and no earlier readings
    expect(largestGap).toBeLessThan(TAKES / 2);
    expect((await checkArchive(bytesAsSource(bytes))).counts.takes).toBe(TAKES);
  });

  it('stops when asked to', async () => {
    const controller = new AbortController();
    const { outcome } = await writing(many, {
      signal: controller.signal,
      onProgress: ({ table }) => table === 'partials' && controller.abort(),
    });
    expect(outcome).toBeInstanceOf(ArchiveFault);
    expect(outcome).toMatchObject({ reason: 'cancelled', message: 'stopped; nothing was changed' });
  });

  it('tells how far it is', async () => {
    const told: string[] = [];
    await writing(many, { onProgress: ({ table, rowCount }) => void told.push(`${table} ${rowCount}`) });
    expect(told).toContain(`readings ${TAKES}`);
    expect(told).toContain(`partials ${TAKES}`);
    expect(told.filter((line) => line.startsWith('readings')).length).toBeGreaterThan(2);
  });

  it('refuses kindly what is more than one file holds', async () => {
    const { outcome } = await writing(many, { mostBytes: 50_000 });
    expect(outcome).toMatchObject({ reason: 'too-large' });
    expect(String(outcome)).toMatch(/write several archives, of some instruments each/);
  });

  it.each([
    ['one more', (): Take[] => [take, { ...take, id: 'new' as Take['id'] }]],
    ['one less', (): Take[] => []],
    ['another', (): Take[] => [{ ...take, id: 'new' as Take['id'] }]],
  ])('notices where takes come while it writes: %s', async (_, later) => {
    let times = 0;
    const takes = () => {
      times += 1;
      return times === 1 ? [take] : later();
    };
    expect((await writing({ ...many, takes })).outcome).toMatchObject({ reason: 'records-changed' });
  });

  it('gives the same rows where the browser cannot compress by itself', async () => {
    vi.stubGlobal('CompressionStream', undefined);
    const rows = exampleRows();
    expect(await rowsOf(await archiveOf(rows))).toEqual(rows);
  });
});

describe('reading', () => {
  it('asks for pieces, never for the whole, and stops when asked to', async () => {
    const { bytes } = await writing(many);
    let largestBytes = 0;
    const source: ByteSource = {
      byteCount: bytes.length,
      read: (offset, length) => {
        largestBytes = Math.max(largestBytes, length);
        return bytesAsSource(bytes).read(offset, length);
      },
    };
    const outcome = await openArchive(source);
    if (!outcome.opened) throw outcome.fault;
    const controller = new AbortController();
    const shares: number[] = [];
    let takeCount = 0;
    const read = async () => {
      for await (const batch of outcome.archive.batches({
        signal: controller.signal,
        onProgress: (share) => void shares.push(share),
      })) {
        if (batch.kind === 'takes') takeCount += batch.rows.length;
        if (takeCount > 200) controller.abort();
      }
    };
    await expect(read()).rejects.toMatchObject({ reason: 'cancelled' });
    expect(takeCount).toBeLessThan(400);
    expect(largestBytes).toBeLessThanOrEqual(1 << 20);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
  });

  it('gives some kinds of rows alone', async () => {
    const rows = exampleRows();
    const back = await rowsOf(await archiveOf(rows), { kinds: ['visits', 'sounds'] });
    expect(back).toEqual({ ...emptyRows(), visits: rows.visits, sounds: rows.sounds });
  });

  it('unpacks no more than it is allowed to', async () => {
    const limits = { mostBytes: 1000, mostFileBytes: 1000 };
    const report = await checkArchive(bytesAsSource(await archiveOf(exampleRows())), { limits });
    expect(report).toMatchObject({ isWhole: false, refusal: 'too-large' });
  });
});
