/**
 * The description of the archive: a Data Package, version 2, with a Table Schema for each table (datapackage.org). It is written last,
 * when the checksums of all files are known.
 */

import type { LeftOut } from './archiveContents.ts';
import { ARCHIVE_TABLES, ARCHIVE_VERSION } from './archiveTables.ts';
import { type Column, type ColumnType, furtherColumn, type TableSpec } from './tableSpec.ts';
import type { WrittenFile } from './zipWriter.ts';

export const PACKAGE_FILE = 'datapackage.json';
const PROFILE = 'https://datapackage.org/profiles/2.0';

export type PackageFacts = {
  /** ISO 8601 date and time. */
  readonly createdAt: string;
  readonly programVersion: string;
  readonly leftOut: readonly LeftOut[];
};

export type PackagedFile = WrittenFile & {
  /** Of the table, or of the clip or picture. */
  readonly name: string;
  /** For a table: how many rows it has. */
  readonly rowCount: number | null;
};

export function dataPackage(facts: PackageFacts, files: readonly PackagedFile[]): object {
  return {
    $schema: `${PROFILE}/datapackage.json`,
    name: 'stillpin-archive',
    title: 'Pitch surveys of pianos',
    description: 'Instruments, visits and what was measured on every note. README.txt explains the tables.',
    created: facts.createdAt,
    stillpin: { archiveVersion: ARCHIVE_VERSION, programVersion: facts.programVersion, leftOut: facts.leftOut },
    resources: files.map(resource),
  };
}

function resource(file: PackagedFile): object {
  const checks = { bytes: file.byteCount, hash: `sha256:${file.sha256}` };
  const spec = ARCHIVE_TABLES.find(({ name }) => name === file.name);
  if (file.rowCount !== null && spec) return { ...tableResource(spec, file), ...checks, rowCount: file.rowCount };
  const format = file.path.slice(file.path.lastIndexOf('.') + 1);
  return { name: file.name, path: file.path, format, mediatype: MEDIA_TYPES[format] ?? BYTES, ...checks };
}

const BYTES = 'application/octet-stream';

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  flac: 'audio/flac',
  jpg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  txt: 'text/plain',
};

function tableResource(spec: TableSpec, file: PackagedFile): object {
  return {
    name: spec.name,
    type: 'table',
    path: file.path,
    title: spec.title,
    description: spec.description,
    format: 'csv',
    mediatype: 'text/csv',
    encoding: 'utf-8',
    dialect: {
      $schema: `${PROFILE}/tabledialect.json`,
      delimiter: ',',
      lineTerminator: '\r\n',
      quoteChar: '"',
      doubleQuote: true,
      header: true,
    },
    schema: tableSchema(spec),
  };
}

export function tableSchema(spec: TableSpec): object {
  return {
    $schema: `${PROFILE}/tableschema.json`,
    fields: [...spec.columns, furtherColumn].map(field),
    missingValues: [''],
    ...(spec.key.length > 0 ? { primaryKey: spec.key } : {}),
    ...(spec.foreignKeys.length > 0 ? { foreignKeys: spec.foreignKeys.map(foreignKey) } : {}),
  };
}

function foreignKey({ columns, table, key }: TableSpec['foreignKeys'][number]): object {
  return { fields: columns, reference: { resource: table, fields: key } };
}

const FIELD_TYPES: Readonly<Record<ColumnType, string>> = {
  text: 'string',
  number: 'number',
  integer: 'integer',
  boolean: 'boolean',
  date: 'date',
  time: 'datetime',
  list: 'array',
  object: 'object',
};

/** Times need not say their seconds, and may say fractions of them: `any` lets readers of both versions of Table Schema take them. */
function field(column: Column): object {
  const { name, type, description, empty, oneOf, minimum, maximum } = column;
  const constraints = {
    ...(empty === 'refused' ? { required: true } : {}),
    ...(oneOf ? { enum: oneOf } : {}),
    ...(minimum === undefined ? {} : { minimum }),
    ...(maximum === undefined ? {} : { maximum }),
  };
  return {
    name,
    type: FIELD_TYPES[type],
    ...(type === 'time' ? { format: 'any' } : {}),
    description,
    ...(Object.keys(constraints).length > 0 ? { constraints } : {}),
  };
}
