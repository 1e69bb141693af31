// `npm run bench [-- quick] [-- TABLE…]`: bundles the bench, so that it runs as fast as the command line does, and runs it.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = mkdtempSync(join(root, 'node_modules', '.bench-')); // where the packages left out of the bundle are found
try {
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    build: {
      ssr: 'tests/bench/main.ts',
      outDir: folder,
      emptyOutDir: false,
      target: 'node20',
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'bench.mjs' } },
    },
    ssr: { noExternal: true, external: ['vite', 'playwright-core'] },
  });
  const run = spawnSync(process.execPath, [join(folder, 'bench.mjs'), ...process.argv.slice(2)], {
    cwd: root,
    stdio: 'inherit',
  });
  process.exitCode = run.status ?? 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
