// `npm run stillpin -- …`: builds the command line when a source file is newer than the bundle, then runs it.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));
const bundle = join(root, 'dist-cli', 'cli.js');
const newest = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .reduce((latest, entry) => Math.max(latest, statSync(join(entry.parentPath, entry.name)).mtimeMs), 0);
const inputs = () =>
  Math.max(
    newest(join(root, 'src')),
    ...['package-lock.json', 'vite.cli.config.ts'].map((f) => statSync(join(root, f)).mtimeMs),
  );

if (!existsSync(bundle) || statSync(bundle).mtimeMs < inputs()) {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  // Built aside and moved into place, so that two runs at once never read half a file.
  const aside = join(root, 'dist-cli', `building-${process.pid}`);
  const args = [vite, 'build', '--config', 'vite.cli.config.ts', '--logLevel', 'error', '--outDir', aside];
  const built = spawnSync(process.execPath, args, { cwd: root, stdio: ['ignore', process.stderr, process.stderr] });
  if (built.status !== 0) {
    console.error('Building the command line failed (see above).');
    process.exit(1);
  }
  renameSync(join(aside, 'cli.js'), bundle);
  rmSync(aside, { recursive: true, force: true });
}
// File names on the command line are meant from where the user stands, which npm passes on as INIT_CWD.
const cwd = process.env.npm_lifecycle_event === 'stillpin' ? (process.env.INIT_CWD ?? process.cwd()) : process.cwd();
const run = spawnSync(process.execPath, [bundle, ...process.argv.slice(2)], { cwd, stdio: 'inherit' });
process.exit(run.status ?? 1);
