/** A Chromium for the tests: the one named, one that is there, or one that can be had without asking. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const KNOWN_PATHS: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  linux: ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', '/snap/bin/chromium'],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ],
  win32: [
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
    'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
  ],
};

/** @throws {Error} that names the two remedies, where none is found and none can be installed */
export function findChromium(): string {
  const found = chromiumHere() ?? installFromDebian() ?? installWithPlaywright();
  if (found !== undefined) return found;
  throw new Error(
    'No Chromium was found for the browser tests. Install Chromium with your system’s package manager, ' +
      'or set CHROME_PATH to the program file of a Chromium or Chrome.',
  );
}

/**
 * The one named or one that is there; undefined where there is none.
 * @throws {Error} if the one named is no file
 */
export function chromiumHere(): string | undefined {
  const named = process.env.CHROME_PATH;
  if (named === undefined || named === '') return presentChromium();
  if (existsSync(named)) return named;
  throw new Error(`CHROME_PATH names no file: ${named}`);
}

function presentChromium(): string | undefined {
  const candidates = [...(KNOWN_PATHS[process.platform] ?? []), chromium.executablePath()];
  return candidates.find((path) => path !== '' && existsSync(path));
}

function installFromDebian(): string | undefined {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !isDebianFamily()) return undefined;
  console.error('No Chromium found: installing the package chromium with apt-get.');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const isDone = (args: readonly string[]) => spawnSync('apt-get', args, { env, stdio: 'ignore' }).status === 0;
  if (!isDone(['update']) || !isDone(['install', '-y', '--no-install-recommends', 'chromium'])) return undefined;
  return presentChromium();
}

function isDebianFamily(): boolean {
  const release = existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : '';
  return /^ID(_LIKE)?=.*\b(debian|ubuntu)\b/m.test(release);
}

function installWithPlaywright(): string | undefined {
  console.error('No Chromium found: asking playwright-core to fetch one.');
  const packageFile = createRequire(import.meta.url).resolve('playwright-core/package.json');
  const args = [join(packageFile, '..', 'cli.js'), 'install', 'chromium'];
  spawnSync(process.execPath, args, { stdio: ['ignore', 'ignore', 'inherit'] });
  return presentChromium();
}
