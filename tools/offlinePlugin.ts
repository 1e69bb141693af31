/** Vite plugin: makes the built page installable and able to work without a network. Does nothing while developing. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const WORKER = 'offlineWorker.js';
const SHOWN_BY_SYSTEM = fileURLToPath(new URL('../src/app/installable/', import.meta.url));
const TAGS = [
  { rel: 'manifest', href: './stillpin.webmanifest' },
  { rel: 'apple-touch-icon', href: './icon-180.png' },
];

/**
 * Ships the service worker with the list of everything that was built, and the manifest with its icons under names that stay.
 * The list's hash is the version: it changes with any byte of any file.
 */
export function offlinePlugin(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    buildStart() {
      if (this.environment.config.build.ssr !== false) return;
      this.emitFile({ type: 'chunk', id: '/src/app/offlineWorker.ts', fileName: WORKER });
      for (const fileName of readdirSync(SHOWN_BY_SYSTEM)) {
        this.emitFile({ type: 'asset', fileName, source: readFileSync(SHOWN_BY_SYSTEM + fileName) });
      }
    },
    transformIndexHtml: () => TAGS.map((attrs) => ({ tag: 'link', attrs, injectTo: 'head' as const })),
    generateBundle(_options, bundle) {
      const worker = bundle[WORKER];
      if (worker?.type !== 'chunk') return;
      if (worker.imports.length > 0) this.error(`${WORKER} must stand alone, but imports ${worker.imports.join(', ')}`);
      const built = Object.values(bundle).filter(({ fileName }) => fileName !== WORKER);
      const hash = createHash('sha256').update(worker.code);
      for (const output of built.toSorted((a, b) => (a.fileName < b.fileName ? -1 : 1)))
        hash.update(output.fileName).update(output.type === 'chunk' ? output.code : output.source);
      const files = ['./', ...built.map(({ fileName }) => `./${fileName}`)];
      const offline = { version: hash.digest('hex').slice(0, 16), files };
      worker.code = `self.OFFLINE=${JSON.stringify(offline)};\n${worker.code}`;
    },
  };
}
