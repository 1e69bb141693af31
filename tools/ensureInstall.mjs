// Installs the locked packages when they are missing or differ from package-lock.json, so that the first command on a
// bare clone works. Uses Node's own modules only, since it runs before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../', import.meta.url));

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Node.js 20.19 or newer is needed; this is ${process.versions.node}.`);
  process.exit(1);
}

const packagesIn = (file) =>
  existsSync(root + file) ? JSON.parse(readFileSync(root + file, 'utf8')).packages : undefined;
const wanted = packagesIn('package-lock.json');
const installed = packagesIn('node_modules/.package-lock.json');
const isPresent = ([path, entry]) =>
  path === '' || installed[path]?.version === entry.version || (!installed[path] && (entry.optional || entry.peer));

if (!(wanted && installed && Object.entries(wanted).every(isPresent))) {
  const args = [wanted ? 'ci' : 'install', '--include=dev', '--no-audit', '--no-fund'];
  const npmScript = process.env.npm_execpath; // npm's own JavaScript: needs no shell
  const stdio = ['ignore', process.stderr, process.stderr]; // standard output stays the command's own
  const result = npmScript
    ? spawnSync(process.execPath, [npmScript, ...args], { cwd: root, stdio })
    : spawnSync('npm', args, { cwd: root, stdio, shell: process.platform === 'win32' });
  if (result.status !== 0) {
    console.error('Installing the packages failed (see above).');
    process.exit(result.status ?? 1);
  }
}
