/** `npm run bench [-- quick] [-- TABLE…]`: measures accuracy and speed and prints tables. It asserts nothing. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isMainThread } from 'node:worker_threads';
import { accuracyTables } from './accuracyTables.ts';
import { measureAccuracyTakes } from './accuracyTakes.ts';
import { archiveTable } from './archiveTable.ts';
import type { Bench, BenchSize } from './bench.ts';
import { answerJobs, createBenchPool } from './benchPool.ts';
import { boundTable } from './boundTable.ts';
import { cleanStringTable } from './cleanStringTable.ts';
import { commandLineTables } from './commandLineTables.ts';
import { concertGrandTable } from './concertGrandTable.ts';
import { coverageTable } from './coverageTable.ts';
import { driftTable } from './driftTable.ts';
import { falseBeatTable } from './falseBeatTable.ts';
import { namingTable } from './namingTable.ts';
import { noteSpeedTables } from './noteSpeedTables.ts';
import { peerTables } from './peerTables.ts';
import { createReport } from './report.ts';
import { surveyTable } from './surveyTable.ts';
import { trialTable } from './trialTable.ts';
import { unisonTable } from './unisonTable.ts';
import { wireTable } from './wireTable.ts';

/** In the order printed. The threads are at rest while the speed is measured. */
const TABLE_NAMES = [
  'accuracy',
  'peers',
  'bound',
  'beats',
  'coverage',
  'naming',
  'grand',
  'survey',
  'drift',
  'trials',
  'wires',
  'speed',
  'archive',
  'browser',
  'records',
  'faults',
  'audit',
] as const;
type TableName = (typeof TABLE_NAMES)[number];

if (isMainThread) await runBench(process.argv.slice(2));
else answerJobs();

async function runBench(args: readonly string[]): Promise<void> {
  const size: BenchSize = args.includes('quick') ? 'quick' : 'full';
  const wanted = args.filter((arg) => arg !== 'quick');
  const unknown = wanted.find((arg) => !TABLE_NAMES.some((name) => name === arg));
  if (unknown !== undefined) {
    console.error(`There is no table "${unknown}"; there are ${TABLE_NAMES.join(', ')}. Add quick for a short run.`);
    process.exitCode = 2;
    return;
  }
  const startedAt = performance.now();
  const report = createReport((text) => console.log(text));
  const folder = mkdtempSync(join(tmpdir(), 'stillpin-bench-'));
  const pool = createBenchPool(progress);
  const tables = tablesOf({ size, pool, report, folder, progress });
  try {
    for (const name of TABLE_NAMES) if (wanted.length === 0 || wanted.includes(name)) await tables[name]();
  } finally {
    await pool.close();
    rmSync(folder, { recursive: true, force: true });
  }
  report.summary();
  const { user, system } = process.cpuUsage();
  const minutes = ((performance.now() - startedAt) / 60_000).toFixed(1);
  console.log(
    `\nA ${size} run: ${minutes} minutes, ${((user + system) / 6e7).toFixed(1)} of processor time without child processes.`,
  );
}

function tablesOf(bench: Bench): Record<TableName, () => Promise<void>> {
  const accuracyTakes = once(() => measureAccuracyTakes(bench));
  const beatRates = once(() => falseBeatTable(bench));
  return {
    accuracy: async () => accuracyTables(await accuracyTakes(), bench.report),
    peers: async () => peerTables(bench, await accuracyTakes()),
    bound: () => boundTable(bench),
    beats: async () => {
      await beatRates();
      await cleanStringTable(bench);
      await unisonTable(bench);
    },
    coverage: async () => coverageTable(await accuracyTakes(), await beatRates(), bench.report),
    naming: () => namingTable(bench),
    grand: () => concertGrandTable(bench),
    survey: () => surveyTable(bench),
    drift: () => driftTable(bench),
    trials: () => trialTable(bench),
    wires: () => wireTable(bench),
    speed: async () => {
      await commandLineTables(bench);
      noteSpeedTables(bench);
    },
    archive: () => archiveTable(bench),
    browser: async () => (await import('./browserTable.ts')).browserTable(bench),
    records: async () => (await import('./recordsTable.ts')).recordsTable(bench),
    audit: async () => (await import('./auditTable.ts')).auditTable(bench),
    faults: async () => (await import('./faultTable.ts')).faultTable(bench),
  };
}

/** Two tables that count on the same takes measure them one time. */
function once<Result>(make: () => Promise<Result>): () => Promise<Result> {
  let made: Promise<Result> | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** One line on a terminal, written over; nothing where the output of errors goes to a file. */
function progress(line: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r${line.slice(0, 78).padEnd(78)}\r`);
}
