/**
 * An archive read by a general-purpose Data Package library that knows nothing of this program: `datapackage`, by the standard's own
 * authors, which checks the description against the published profiles (version 1, which version 2 keeps to) and every cell of every
 * table against its Table Schema, keys included.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { Package } from 'datapackage';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { archiveOf, exampleRows } from './exampleArchive.ts';

type Files = Record<string, Uint8Array>;

let files: Files;
const folder = mkdtempSync(join(tmpdir(), 'stillpin-package-'));
beforeAll(async () => {
  files = unzipSync(await archiveOf(exampleRows()));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const textOf = (name: string) => new TextDecoder().decode(files[name]);

/** How many rows each table has, as the library reads them; or what it says is wrong. */
async function readByLibrary(changed: Files = {}): Promise<Record<string, number | string>> {
  const basePath = mkdtempSync(join(folder, 'read-'));
  const all = { ...files, ...changed };
  for (const [path, bytes] of Object.entries(all)) {
    mkdirSync(dirname(join(basePath, path)), { recursive: true });
    writeFileSync(join(basePath, path), bytes);
  }
  const loaded = await Package.load(asVersion1(new TextDecoder().decode(all['datapackage.json'])), { basePath });
  const found: Record<string, number | string> = {};
  if (!loaded.valid) found.package = loaded.errors.map(String).join('; ');
  for (const resource of loaded.resources)
    if (resource.tabular)
      found[resource.name] = await resource.read({ keyed: true, relations: true }).then(
        (rows) => rows.length,
        (fault: Error & { errors?: readonly Error[] }) => [fault, ...(fault.errors ?? [])].map(String).join('; '),
      );
  return found;
}

/** What version 2 calls a resource's type, version 1 calls its profile. */
function asVersion1(description: string): object {
  const json: { resources: { type?: string }[] } = JSON.parse(description);
  const resources = json.resources.map((one) =>
    one.type === 'table' ? { ...one, profile: 'tabular-data-resource' } : one,
  );
  return { ...json, resources };
}

const changedText = (name: string, what: string | RegExp, by: string): Files => {
  const after = textOf(name).replace(what, by);
  if (after === textOf(name)) throw new Error(`${name} was not changed`);
  return { [name]: new TextEncoder().encode(after) };
};

describe('a general-purpose library', () => {
  it('finds the description and every table of an archive sound, with as many rows as were written', async () => {
    const rows = exampleRows();
    const found = await readByLibrary();
    expect(Object.values(found).filter((count) => typeof count === 'string')).toEqual([]);
    expect(Object.keys(found).length).toBe(textOf('datapackage.json').split('"type": "table"').length - 1);
    expect(found).toMatchObject({
      instruments: rows.instruments.length,
      visits: rows.visits.length,
      readings: rows.takes.length,
      partials: rows.takes.flatMap(({ reading, earlierReadings = [] }) => [
        ...reading.partials,
        ...earlierReadings.flatMap((earlier) => earlier.reading.partials),
      ]).length,
      torque: rows.torques.length,
      gone: rows.gone.length,
    });
  });

  it.each([
    ['a word for a number', 'torque', () => changedText('torque.csv', '9.25', 'tight')],
    [
      'a value that is none of those listed',
      'torque',
      () => changedText('torque.csv', /sharpwards|flatwards|not noted/, 'upwards'),
    ],
    ['a cell that has to have a value', 'events', () => changedText('events.csv', /,\d{4}-\d{2}-\d{2},/, ',,')],
    ['a date that is none', 'events', () => changedText('events.csv', /,\d{4}-\d{2}-\d{2},/, ',2020-13-01,')],
    ['a key that leads nowhere', 'visits', () => changedText('visits.csv', /\r\n([^,]+),[^,]+,/, '\r\n$1,nobody,')],
    ['a resource without a path', 'package', () => changedText('datapackage.json', '"path": "visits.csv"', '"x": 1')],
    ['a field of an unknown type', 'events', () => changedText('datapackage.json', '"type": "date"', '"type": "day"')],
  ])('is not content with %s', async (_, where, change) => {
    const found = await readByLibrary(change()).catch((fault: unknown) => ({ package: String(fault) }));
    expect((found as Record<string, unknown>)[where]).toBeTypeOf('string');
  });
});
