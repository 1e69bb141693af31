import { defineConfig } from 'vite';

// One self-contained file that starts in about a tenth of a second.
export default defineConfig({
  publicDir: false,
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist-cli',
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'cli.js' } },
  },
  ssr: { noExternal: true },
});
