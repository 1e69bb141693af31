/** README.txt of the archive: for a person who finds it in thirty years and has no program for it. */
import { ARCHIVE_TABLES } from './archiveTables.ts';
import type { PackageFacts } from './dataPackage.ts';
import { furtherColumn, type TableSpec } from './tableSpec.ts';

/** Lines end with CR LF, so that every editor shows them. */
export function readmeText(facts: PackageFacts): string {
  return [...head(facts), ...ARCHIVE_TABLES.flatMap(tableLines)].join('\r\n');
}

function head({ createdAt, programVersion, leftOut }: PackageFacts): string[] {
  return [
    'PITCH SURVEYS OF PIANOS',
    '',
    `Written ${createdAt} by Stillpin ${programVersion}.`,
    ...(leftOut.length > 0 ? [`Left out on purpose: ${leftOut.join(', ')}.`] : []),
    '',
    'What this is. Records of pianos over the years: the instruments, the visits they had, how every note was pitched before and',
    'after tuning, what was measured in its sound, and what was done. No special program is needed: the tables are text, the sounds',
    'are FLAC files, the pictures are ordinary pictures, and all of it stands in one ZIP file.',
    '',
    'How it is written. Each *.csv file is one table: text in UTF-8, one row a line, cells separated by commas, a cell with a comma,',
    'a quotation mark or a line break in it stands in quotation marks (RFC 4180). The first row names the columns. datapackage.json',
    'describes every column, and how the tables hang together, in a form for programs (Data Package, version 2, datapackage.org),',
    'with a SHA-256 checksum and the size of every file.',
    '',
    'Cells',
    '- The unit stands at the end of a column name: _hz hertz, _cents hundredths of a semitone, _s seconds, _db decibels, _dbfs decibels',
    '  against full scale, _c degrees Celsius, _pct per cent, _ppm parts per million, _mm, _nm newton metres, _gpa, _mpa.',
    '- A column name that ends in _u is the standard uncertainty (one sigma) of the column before it, in the same unit.',
    '- An empty cell: not measured, not known, or nothing said.',
    '- Numbers have all the digits that the computer had: read as 64-bit floating-point numbers they are the very same numbers.',
    '  INF and -INF are infinite.',
    "- Text that begins with = + - @ (also in their full width), a tab, a line break or an apostrophe has one apostrophe (') put before it,",
    '  so that no spreadsheet takes it for a formula. Take one apostrophe off the front of such text to have what was written.',
    '- Lists and objects are JSON. So is the column "further", which holds fields that have no column of their own.',
    '  In such JSON {"@number": "INF"} is a number that JSON cannot write (also -INF, NaN, -0), {"@numbers": [...]} a table of numbers,',
    '  {"@bytes": "..."} bytes in hexadecimal digits, {"@absent": true} a field that is not there at all, and {"@object": {...}} an object',
    '  whose own first field begins with @.',
    '- Notes are MIDI numbers (A4 is 69, a semitone is 1), with the name of the note beside them.',
    '- id columns tie the tables together: visits.instrument_id names the instrument that has that id in instruments.csv, and so on.',
    '- deleted_at: the row was put in the bin and could still be brought back. stamp: which device has edited it how often.',
    '- earlier-readings, partials, beats and components keep their rows in the order of readings.csv; leave that order as it is if a',
    '  program is to read them again.',
    '',
    'The tables',
  ];
}

function tableLines(spec: TableSpec): string[] {
  return [
    '',
    `${spec.name}.csv - ${spec.description}.`,
    ...[...spec.columns, furtherColumn].map(({ name, description }) => `  ${name}: ${description}`),
  ];
}
