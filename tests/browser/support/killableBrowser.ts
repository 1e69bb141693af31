/** A Chromium with a profile on the disk that can be ended as a dead battery ends it: at once, all its processes, without a word. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { chromium, type Page } from 'playwright-core';

export type KillableBrowser = { readonly page: Page; readonly kill: () => Promise<void> };

const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--remote-debugging-port=0',
];
const STARTS_WITHIN_MS = 60_000;
/** A machine that is busy with other things may take its time. */
const PATIENCE_MS = 180_000;

export async function openKillable(chromiumPath: string, profile: string): Promise<KillableBrowser> {
  const portFile = join(profile, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  const child = spawn(chromiumPath, [...FLAGS, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true, // a process group of its own, so that nothing of it outlives it
    stdio: 'ignore',
  });
  const ended = once(child, 'exit');
  const kill = async () => {
    if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
    await ended;
  };
  const port = await portIn(portFile);
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  const [context] = browser.contexts();
  if (!context) throw new Error('the browser has no context');
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  return { page, kill };
}

/** By its path: the file is on the same machine, and need not be sent to the browser through the connection. */
export async function chooseFile(page: Page, label: string, path: string): Promise<void> {
  await page.getByLabel(label, { exact: true }).waitFor({ state: 'attached' });
  const session = await page.context().newCDPSession(page);
  const expression = `[...document.querySelectorAll('input[type=file]')].find((input) => input.ariaLabel === ${JSON.stringify(label)})`;
  const { result } = await session.send('Runtime.evaluate', { expression });
  if (result.objectId === undefined) throw new Error(`there is no file input called ${label}`);
  await session.send('DOM.setFileInputFiles', { files: [path], objectId: result.objectId });
}

async function portIn(portFile: string): Promise<string> {
  for (let waitedMs = 0; waitedMs < STARTS_WITHIN_MS; waitedMs += 50) {
    const [port] = existsSync(portFile) ? readFileSync(portFile, 'utf8').split('\n') : [];
    if (port) return port;
    await wait(50);
  }
  throw new Error('the browser did not start');
}
