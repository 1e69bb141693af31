/** Once for all browser tests: a Chromium, the app built as it is shipped, the bare listening page, and a server for both. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';
import { findChromium } from './support/findChromium.ts';
import { serveFolder } from './support/serveFolder.ts';

declare module 'vitest' {
  interface ProvidedContext {
    chromiumPath: string;
    /** The app's address, ending in a slash. */
    appUrl: string;
    /** Where the built app lies on the disk. */
    appFolder: string;
    /** The address of the page that has capture and workers without screens. */
    harnessUrl: string;
  }
}

const projectRoot = fileURLToPath(new URL('../../', import.meta.url));
const harnessRoot = fileURLToPath(new URL('./harness/', import.meta.url));

export async function setup(project: TestProject): Promise<() => Promise<void>> {
  project.provide('chromiumPath', findChromium());
  const outDir = mkdtempSync(join(tmpdir(), 'browser-tests-'));
  const ownNodeEnv = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production'; // the test runner's own value would build React's slow development version
  const into = (name: string) => ({ outDir: join(outDir, name), emptyOutDir: true });
  await build({ root: projectRoot, logLevel: 'warn', build: into('app') });
  await build({
    configFile: false,
    root: harnessRoot,
    base: './',
    logLevel: 'warn',
    build: { ...into('harness'), target: 'es2022' },
    worker: { format: 'es' },
  });
  process.env.NODE_ENV = ownNodeEnv;
  const server = await serveFolder(outDir);
  project.provide('appUrl', `${server.url}app/`);
  project.provide('appFolder', join(outDir, 'app'));
  project.provide('harnessUrl', `${server.url}harness/`);
  return async () => {
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  };
}
