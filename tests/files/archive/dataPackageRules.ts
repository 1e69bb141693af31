/**
 * What the standard asks of datapackage.json, as a JSON Schema. Written by us after the text of Data Package, Data Resource, Table Schema
 * and Table Dialect, version 2.0 (datapackage.org/standard, 2024), as far as an archive uses it; it is not the published profile.
 */

const text = { type: 'string' };
const count = { type: 'integer', minimum: 0 };
const name = { type: 'string', minLength: 1 };
/** A POSIX path within the package: relative, and not out of it. */
const path = { type: 'string', pattern: '^(?![./~])(?!.*(^|/)\\.\\.(/|$))(?!.*:)(?!.*\\\\).+$' };

const ORDERED = ['number', 'integer', 'date', 'datetime'];
const ANY_TYPE = ['string', ...ORDERED, 'boolean', 'array', 'object'];
const FORMATS: Readonly<Record<string, readonly string[]>> = { datetime: ['default', 'any'], date: ['default', 'any'] };

const field = {
  type: 'object',
  required: ['name', 'type'],
  properties: {
    name,
    type: { enum: ANY_TYPE },
    format: text,
    title: text,
    description: text,
    constraints: {
      type: 'object',
      properties: {
        required: { type: 'boolean' },
        unique: { type: 'boolean' },
        enum: { type: 'array', minItems: 1, uniqueItems: true },
      },
    },
  },
  allOf: ANY_TYPE.map((type) => ({
    if: { properties: { type: { const: type } } },
    // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
    then: {
      properties: {
        format: { enum: FORMATS[type] ?? ['default'] },
        constraints: {
          properties: {
            ...(ORDERED.includes(type) ? {} : { minimum: false, maximum: false }),
            enum: { items: { type: type === 'number' || type === 'integer' ? 'number' : 'string' } },
          },
        },
      },
    },
  })),
};

const fieldNames = { type: 'array', minItems: 1, uniqueItems: true, items: name };

const tableSchema = {
  type: 'object',
  required: ['fields'],
  properties: {
    $schema: { const: 'https://datapackage.org/profiles/2.0/tableschema.json' },
    fields: { type: 'array', minItems: 1, items: field },
    missingValues: { type: 'array', items: text },
    primaryKey: fieldNames,
    foreignKeys: {
      type: 'array',
      minItems: 1,
      items: {
        type: 'object',
        required: ['fields', 'reference'],
        properties: {
          fields: fieldNames,
          reference: {
            type: 'object',
            required: ['resource', 'fields'],
            properties: { resource: name, fields: fieldNames },
          },
        },
      },
    },
  },
};

const dialect = {
  type: 'object',
  properties: {
    $schema: { const: 'https://datapackage.org/profiles/2.0/tabledialect.json' },
    delimiter: text,
    lineTerminator: text,
    quoteChar: { type: 'string', minLength: 1, maxLength: 1 },
    doubleQuote: { type: 'boolean' },
    header: { type: 'boolean' },
  },
};

const resource = {
  type: 'object',
  required: ['name', 'path'],
  properties: {
    name,
    path,
    type: { enum: ['table'] },
    title: text,
    description: text,
    format: text,
    mediatype: { type: 'string', pattern: '^.+/.+$' },
    encoding: text,
    bytes: count,
    hash: { type: 'string', pattern: '^([^:]+:[a-fA-F0-9]+|[a-fA-F0-9]{32}|)$' },
    dialect,
    schema: tableSchema,
  },
};

export const DATA_PACKAGE_RULES = {
  type: 'object',
  required: ['resources'],
  properties: {
    $schema: { const: 'https://datapackage.org/profiles/2.0/datapackage.json' },
    name: { type: 'string', pattern: '^[a-z0-9._/-]+$' },
    id: text,
    title: text,
    description: text,
    version: text,
    created: { type: 'string', format: 'date-time' },
    resources: { type: 'array', minItems: 1, items: resource },
  },
};
