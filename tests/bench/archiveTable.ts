/** Table 9: archives of many instruments, time and memory of writing, checking and reading them. */
import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { fileSpools } from '../../src/cli/archive/fileSpool.ts';
import { NODE_BYTE_WORK } from '../../src/cli/archive/nodeByteWork.ts';
import { checkArchive } from '../../src/files/archive/checkArchive.ts';
import { openArchive } from '../../src/files/archive/readArchive.ts';
import { writeArchive } from '../../src/files/archive/writeArchive.ts';
import type { ByteSource } from '../../src/files/audio/byteSource.ts';
import { benchWorkshop } from './archiveRecords.ts';
import { type Bench, sized } from './bench.ts';
import { figure } from './report.ts';

const VISITS = 20;
const LEAST_MB_PER_S = 20;

type Run = { readonly what: string; readonly wallS: number; readonly processorS: number; readonly memoryMb: number };

/** @param instrumentCount the largest workshop that was thought of has 300 */
export async function archiveTable(bench: Bench, instrumentCount = sized(bench, 2, 20)): Promise<void> {
  const { report, folder, progress } = bench;
  const workshop = benchWorkshop(instrumentCount, VISITS);
  const file = join(folder, 'bench.zip');
  const write = await measured('written', progress, () => writeToFile(file, workshop.contents));
  const handle = await open(file);
  const { size } = await handle.stat();
  const source: ByteSource = {
    byteCount: size,
    read: async (offset, length) => {
      const { buffer, bytesRead } = await handle.read(new Uint8Array(length), 0, length, offset);
      return buffer.subarray(0, bytesRead);
    },
  };
  let unpackedMb = 0;
  const check = await measured('checked', progress, async () => {
    const result = await checkArchive(source, { byteWork: NODE_BYTE_WORK });
    if (!result.isWhole || result.partialCount !== workshop.partialCount)
      throw new Error('the archive did not come back whole');
    unpackedMb = result.unpackedBytes / 1e6;
  });
  const read = await measured('read', progress, () => readAll(source, workshop.takeCount));
  await handle.close();
  report.heading(
    `9  Archive of ${instrumentCount} instruments, ${VISITS} visits each: ${workshop.takeCount} readings, ${workshop.partialCount} partials, ` +
      `${unpackedMb.toFixed(0)} MB of tables in ${(size / 1e6).toFixed(0)} MB`,
  );
  report.table(
    ['', 'time, s', 'MB/s', 'processor time, s', 'MB/s of processor time', 'most memory above the start, MB'],
    [write, check, read].map(({ what, wallS, processorS, memoryMb }) => [
      what,
      wallS.toFixed(1),
      figure(unpackedMb / wallS),
      processorS.toFixed(1),
      figure(unpackedMb / processorS),
      memoryMb.toFixed(0),
    ]),
  );
  for (const { what, processorS } of [write, check, read])
    report.limit({
      what: `archive ${what}, tables by processor time`,
      measured: unpackedMb / processorS,
      unit: 'MB/s',
      atLeast: LEAST_MB_PER_S,
    });
}

async function writeToFile(file: string, contents: Parameters<typeof writeArchive>[0]): Promise<void> {
  const handle = await open(file, 'w');
  const options = {
    createdAt: '2026-03-01T10:00:00.000Z',
    programVersion: '0.1.0',
    byteWork: NODE_BYTE_WORK,
    createSpool: fileSpools(file),
  };
  await writeArchive(contents, options, async (bytes) => void (await handle.write(bytes)));
  await handle.close();
}

async function readAll(source: ByteSource, takeCount: number): Promise<void> {
  const outcome = await openArchive(source, { byteWork: NODE_BYTE_WORK });
  if (!outcome.opened) throw outcome.fault;
  let count = 0;
  for await (const batch of outcome.archive.batches()) if (batch.kind === 'takes') count += batch.rows.length;
  if (count !== takeCount) throw new Error(`${count} readings came back of ${takeCount}`);
}

async function measured(what: string, progress: (line: string) => void, act: () => Promise<void>): Promise<Run> {
  progress(`archive being ${what}`);
  const startBytes = process.memoryUsage().rss;
  let mostBytes = startBytes;
  const watch = setInterval(() => {
    mostBytes = Math.max(mostBytes, process.memoryUsage().rss);
  }, 20);
  const startedAt = performance.now();
  const before = process.cpuUsage();
  await act();
  const { user, system } = process.cpuUsage(before);
  clearInterval(watch);
  return {
    what,
    wallS: (performance.now() - startedAt) / 1000,
    processorS: (user + system) / 1e6,
    memoryMb: (mostBytes - startBytes) / 1e6,
  };
}
