import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readTaggedJson } from '../../../src/files/archive/taggedJson.ts';
import { rowsOf } from './exampleArchive.ts';

const stored = (name: string) => readFileSync(new URL(`../../fixtures/archiveVersion1/${name}`, import.meta.url));

it('an archive of version 1 gives back what was written into it', async () => {
  const rows = readTaggedJson(stored('rows.json').toString('utf8'));
  expect(rows).toEqual({ ok: true, value: await rowsOf(stored('records.zip')) });
});
