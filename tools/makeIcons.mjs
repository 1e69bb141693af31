// `node tools/makeIcons.mjs`: draws the PNG icons of src/app/installable anew from icon.svg, in Chromium.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { runnerImport } from 'vite';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = join(root, 'src', 'app', 'installable');
const finder = join(root, 'tests', 'browser', 'support', 'findChromium.ts');
const { module } = await runnerImport(finder, { configFile: false, root, logLevel: 'error' });
const drawing = readFileSync(join(folder, 'icon.svg'), 'utf8');

const browser = await chromium.launch({ executablePath: module.findChromium() });
for (const size of [180, 192, 512]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${drawing}`);
  writeFileSync(join(folder, `icon-${size}.png`), await page.screenshot());
  await page.close();
}
await browser.close();
