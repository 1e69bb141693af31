// Writes the invented records of sample-records anew: node tools/makeSampleRecords.mjs [FOLDER]
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = process.argv[2] ?? join(root, 'sample-records');
const { module } = await runnerImport(join(root, 'tests', 'reference', 'sampleRecords.ts'), {
  configFile: false,
  root,
  logLevel: 'error',
});
mkdirSync(folder, { recursive: true });
for (const { name, text } of module.sampleRecordFiles()) {
  writeFileSync(join(folder, name), text);
  console.log(`${name}  ${text.length} characters`);
}
