/** Runs the built command line as a whole process and says what it took. */
import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';

export type CommandRun = {
  readonly stdout: string;
  readonly wallS: number;
  /** Of all threads together. */
  readonly processorS: number;
  readonly peakMemoryMb: number;
};

/** The bundle is built by the command line's own starter when it is older than its sources. */
export function buildCommandLine(): void {
  const built = spawnSync(process.execPath, [join('tools', 'runCli.mjs'), '--help'], { encoding: 'utf8' });
  if (built.status !== 0) throw new Error(`the command line could not be built: ${built.stderr}`);
}

export async function runCommandLine(args: readonly string[]): Promise<CommandRun> {
  const startedAt = performance.now();
  const child = spawn(process.execPath, [`--import=${REPORT_AT_EXIT}`, join('dist-cli', 'cli.js'), ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const [stdout, stderr] = await Promise.all([textOf(child.stdout), textOf(child.stderr)]);
  const wallS = (performance.now() - startedAt) / 1000;
  const usage = stderr.match(/usage (\d+) (\d+)/);
  if (!usage) throw new Error(`the command line did not end as it should: ${stderr.slice(-500)}`);
  return { stdout, wallS, processorS: Number(usage[2]) / 1e6, peakMemoryMb: Number(usage[1]) / 1024 };
}

/** The main thread writes the process's largest resident size in kB and its processor time in µs, its own and its threads'. */
const REPORT_AT_EXIT = `data:text/javascript,${encodeURIComponent(`
import { isMainThread } from 'node:worker_threads';
if (isMainThread) process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  process.stderr.write('usage ' + maxRSS + ' ' + (userCPUTime + systemCPUTime));
});`)}`;

async function textOf(stream: AsyncIterable<Buffer>): Promise<string> {
  const pieces: Buffer[] = [];
  for await (const piece of stream) pieces.push(piece);
  return Buffer.concat(pieces).toString('utf8');
}
