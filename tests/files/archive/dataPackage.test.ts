import { createHash } from 'node:crypto';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { unzipSync } from 'fflate';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { DATA_PACKAGE_RULES } from './dataPackageRules.ts';
import { archiveOf, exampleRows } from './exampleArchive.ts';

type Field = { name: string; type: string; description: string };
type Schema = {
  fields: Field[];
  primaryKey?: string[];
  foreignKeys?: { fields: string[]; reference: { resource: string; fields: string[] } }[];
};
type Resource = { name: string; path: string; bytes: number; hash: string; type?: string; schema?: Schema };

let files: Record<string, Uint8Array>;
let description: { resources: Resource[] };
let tables: Map<string, Record<string, string>[]>;
const textOf = (name: string) => new TextDecoder('utf-8', { fatal: true }).decode(files[name]);

beforeAll(async () => {
  files = unzipSync(await archiveOf(exampleRows()));
  description = JSON.parse(textOf('datapackage.json'));
  tables = new Map(
    description.resources
      .filter(({ type }) => type === 'table')
      .map(({ name, path }) => {
        const { data, errors } = Papa.parse<Record<string, string>>(textOf(path), {
          header: true,
          skipEmptyLines: true,
        });
        expect(errors).toEqual([]);
        return [name, data];
      }),
  );
});

describe('the description of an archive', () => {
  it('keeps to Data Package, version 2', () => {
    const ajv = addFormats.default(new Ajv({ strict: false, allErrors: true }));
    const isValid = ajv.validate(DATA_PACKAGE_RULES, description);
    expect(ajv.errors ?? []).toEqual([]);
    expect(isValid).toBe(true);
  });

  it('is held to rules that can be broken', () => {
    const ajv = addFormats.default(new Ajv({ strict: false }));
    const broken = (change: (resource: Resource) => void) => {
      const copy = structuredClone(description);
      change(copy.resources[0]!);
      return ajv.validate(DATA_PACKAGE_RULES, copy);
    };
    expect(broken(() => undefined)).toBe(true);
    expect(broken((resource) => Object.assign(resource, { path: '../x' }))).toBe(false);
    expect(broken((resource) => Object.assign(resource, { hash: 'sha256' }))).toBe(false);
    expect(broken((resource) => Object.assign(resource.schema!.fields[0]!, { type: 'text' }))).toBe(false);
    expect(broken((resource) => Object.assign(resource.schema!.fields[0]!, { constraints: { minimum: 1 } }))).toBe(
      false,
    );
  });

  it('has size and checksum of every file but itself and README.txt, as another program reckons them', () => {
    const named = description.resources.map(({ path }) => path);
    expect([...named, 'README.txt', 'datapackage.json'].sort()).toEqual(Object.keys(files).sort());
    for (const { path, bytes, hash } of description.resources) {
      expect(bytes).toBe(files[path]?.length);
      expect(hash).toBe(`sha256:${createHash('sha256').update(files[path]!).digest('hex')}`);
    }
  });

  it('names the columns of every table in their order, each explained', () => {
    const described = description.resources.filter(({ type }) => type === 'table');
    expect(described).toHaveLength(tables.size);
    for (const { name, path, schema } of described) {
      const names = schema?.fields.map((field) => field.name);
      expect(textOf(path).split('\r\n')[0]).toBe(names?.join(','));
      for (const field of schema?.fields ?? [])
        expect(field.description.length, `${name}.${field.name}`).toBeGreaterThan(2);
    }
  });

  it('has keys that hold: primary keys are unique, foreign keys lead to a row', () => {
    let [keyedCount, referringCount] = [0, 0];
    for (const { name, schema } of description.resources) {
      const rows = tables.get(name) ?? [];
      const keyOf = (row: Record<string, string>, fields: readonly string[]) =>
        fields.map((field) => row[field]).join('\t');
      const { primaryKey, foreignKeys = [] } = schema ?? { fields: [] };
      if (primaryKey) expect(new Set(rows.map((row) => keyOf(row, primaryKey))).size).toBe(rows.length);
      keyedCount += primaryKey ? 1 : 0;
      referringCount += foreignKeys.length;
      for (const { fields, reference } of foreignKeys) {
        const there = new Set((tables.get(reference.resource) ?? []).map((row) => keyOf(row, reference.fields)));
        for (const row of rows)
          if (fields.some((field) => row[field] !== ''))
            expect(there, `${name} ${fields}`).toContain(keyOf(row, fields));
      }
    }
    expect(keyedCount).toBeGreaterThan(10);
    expect(referringCount).toBeGreaterThan(10);
  });
});

describe('README.txt', () => {
  it('explains every table and column, in lines that every editor shows', () => {
    const readme = textOf('README.txt');
    for (const { name, schema } of description.resources)
      if (schema) {
        expect(readme).toContain(`\r\n${name}.csv - `);
        for (const field of schema.fields) expect(readme).toContain(`\r\n  ${field.name}: ${field.description}`);
      }
    expect(readme.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
});

describe('cells', () => {
  it('never begin with what a spreadsheet would take for a formula, but for numbers', () => {
    for (const rows of tables.values())
      for (const row of rows)
        for (const cell of Object.values(row)) if (/^[=+\-@\t\r]/.test(cell)) expect(cell).toMatch(/^-(\d|INF)/);
    expect(tables.get('instruments')?.[0]?.owner_address).toBe('\'=1 "Long" Lane\nTown');
    expect(tables.get('decisions')?.map(({ reason }) => reason)).toEqual(["'-", "''quoted'"]);
  });

  it('write numbers with all their digits, and INF for what has no end', () => {
    expect(tables.get('earlier-readings')?.map(({ snr_db }) => snr_db)).toEqual(['41', 'INF']);
    expect(tables.get('readings')?.[0]).toMatchObject({
      inharmonicity_b_u: '0.000004',
      unison_strings_cents: '[0.1,-1e-9]',
    });
  });
});
