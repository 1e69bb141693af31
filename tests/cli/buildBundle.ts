/** Once for all tests: the command line's bundle, built where a source file is newer than it. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export function setup(): void {
  const runCli = fileURLToPath(new URL('../../tools/runCli.mjs', import.meta.url));
  const { status, stderr } = spawnSync(process.execPath, [runCli, '--help'], { encoding: 'utf8' });
  if (status !== 0) throw new Error(`the command line cannot be built: ${stderr}`);
}
