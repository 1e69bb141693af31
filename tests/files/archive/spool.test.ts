import { expect, it } from 'vitest';
import type { Spool } from '../../../src/files/archive/spool.ts';
import { writeArchive } from '../../../src/files/archive/writeArchive.ts';
import { archiveOf, contentsOf, exampleRows, rowsOf, WRITTEN_AT } from './exampleArchive.ts';

function watchedSpools() {
  let [openCount, discardedCount] = [0, 0];
  const createSpool = (): Spool => {
    const kept: Uint8Array[] = [];
    openCount += 1;
    return {
      add: async (bytes) => void kept.push(bytes.slice()),
      async *pieces() {
        yield* kept;
      },
      async discard() {
        discardedCount += 1;
      },
    };
  };
  return { createSpool, counts: () => ({ openCount, discardedCount }) };
}

it('has the takes asked for once, and gives the same archive', async () => {
  const rows = exampleRows();
  const { createSpool, counts } = watchedSpools();
  let times = 0;
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  const takes = () => {
    times += 1;
    return rows.takes;
  };
  const contents = { ...contentsOf(rows), takes };
  const written = await writeArchive(
    contents,
    { ...WRITTEN_AT, createSpool },
    (bytes) => void pieces.push(bytes.slice()),
  );
  const bytes = new Uint8Array(await new Blob(pieces).arrayBuffer());
  expect(times).toBe(1);
  expect(written.byteCount).toBe(bytes.length);
  expect(bytes).toEqual(await archiveOf(rows));
  expect(await rowsOf(bytes)).toEqual(rows);
  expect(counts()).toEqual({ openCount: 4, discardedCount: 4 });
});

it('leaves nothing behind where the writing is stopped', async () => {
  const controller = new AbortController();
  const { createSpool, counts } = watchedSpools();
  const signal = controller.signal;
  const onProgress = ({ table }: { table: string }) => table === 'readings' && controller.abort();
  await expect(
    archiveOf(exampleRows(), { createSpool, signal, onProgress: (progress) => void onProgress(progress) }),
  ).rejects.toMatchObject({ reason: 'cancelled' });
  expect(counts()).toEqual({ openCount: 4, discardedCount: 4 });
});
