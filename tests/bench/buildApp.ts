/** Builds the program as it is shipped into a folder; gives where. */
import { join } from 'node:path';

export async function buildApp(folder: string): Promise<string> {
  const { build } = await import('vite');
  const outDir = join(folder, 'app');
  await build({ root: process.cwd(), logLevel: 'error', build: { outDir, emptyOutDir: true } });
  return outDir;
}
