// Writes the synthetic recordings of sample-audio anew: node tools/makeSampleAudio.mjs [FOLDER]
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = process.argv[2] ?? join(root, 'sample-audio');
const { module } = await runnerImport(join(root, 'tests', 'reference', 'sampleAudio.ts'), {
  configFile: false,
  root,
  logLevel: 'error',
});
mkdirSync(folder, { recursive: true });
for (const { name, bytes } of module.sampleAudioFiles()) {
  writeFileSync(join(folder, name), bytes);
  console.log(`${name}  ${bytes.length} bytes`);
}
