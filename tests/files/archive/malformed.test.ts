import { beforeAll, describe, expect, it } from 'vitest';
import { complaintText } from '../../../src/files/archive/archiveFault.ts';
import { type ArchiveReport, checkArchive } from '../../../src/files/archive/checkArchive.ts';
import { bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { archiveOf, exampleRows, rowsOf } from './exampleArchive.ts';
import { type HandEntry, handZip, joined, type LooseFiles, looseFiles, packed } from './handZip.ts';

let archive: Uint8Array<ArrayBuffer>;
let files: LooseFiles;
beforeAll(async () => {
  archive = await archiveOf(exampleRows());
  files = looseFiles(archive);
});

const check = (bytes: Uint8Array) => checkArchive(bytesAsSource(bytes));
const said = ({ complaints }: ArchiveReport) => complaints.map(complaintText).join('\n');
const textOf = (name: string) => String(files.get(name));

/** The archive with one file changed, and no checksums, so that the change is met where it is. */
function changed(name: string, change: (text: string) => string | Uint8Array): Uint8Array {
  const after = change(textOf(name));
  if (after === textOf(name)) throw new Error(`${name} was not changed`);
  return packed(new Map(files).set(name, after));
}
const replaced = (name: string, what: string | RegExp, by: string) => () =>
  changed(name, (text) => text.replace(what, by));
const without = (name: string) => () => packed(new Map([...files].filter(([one]) => one !== name)));
const entries = (): HandEntry[] => [...files].map(([name, data]) => ({ name, data }));
const withEntry = (entry: HandEntry) => () => handZip([...entries(), entry]);
const described =
  (change: (json: { resources: Record<string, unknown>[] } & Record<string, unknown>) => unknown) => () =>
    changed('datapackage.json', (text) => {
      const json = JSON.parse(text);
      return JSON.stringify(change(json) ?? json);
    });
const utf16 = (text: string) =>
  joined(Uint8Array.of(0xff, 0xfe), new Uint8Array(Uint16Array.from(text, (one) => one.charCodeAt(0)).buffer));
const latin1 = (text: string) => Uint8Array.from(text, (one) => one.charCodeAt(0));

type Case = readonly [what: string, make: () => Uint8Array, says: RegExp];

const CONTAINERS: readonly Case[] = [
  ['nothing', () => new Uint8Array(0), /it is empty/],
  ['one byte', () => Uint8Array.of(80), /not a ZIP file/],
  ['a text', () => latin1('Dear reader, this was never an archive.'), /not a ZIP file/],
  ['zeros', () => new Uint8Array(5000), /not a ZIP file/],
  ['a cut end', () => archive.slice(0, -1), /cut short/],
  ['half of it', () => archive.slice(0, archive.length / 2), /cut short/],
  ['a cut beginning', () => archive.slice(100), /cut short/],
  ['bytes before it', () => joined(new Uint8Array(9), archive), /cut short/],
  ['an empty ZIP file', () => handZip([]), /no datapackage\.json/],
  [
    'a ZIP file of something else',
    () => handZip([{ name: 'letter.txt', data: 'Dear reader' }]),
    /no datapackage\.json/,
  ],
  [
    'two packages in two folders',
    () => handZip([...'ab'].map((folder) => ({ name: `${folder}/datapackage.json`, data: '{}' }))),
    /no datapackage\.json/,
  ],
  ['a list that counts too many', () => handZip(entries(), { entryCount: files.size + 1 }), /cut short/],
  ['a list that counts too few', () => handZip(entries(), { entryCount: files.size - 1 }), /longer than it says/],
  ['one part of several', () => handZip(entries(), { diskNumber: 1 }), /several parts/],
  ['the extension for large files', () => handZip(entries(), { listOffset: 0xffffffff }), /more than 4 GB/],
  ['a list somewhere else', () => handZip(entries(), { listOffset: 10 }), /cut short/],
  ['an encrypted file', withEntry({ name: 'x', data: 'x', claims: { flags: 1 } }), /x: is encrypted/],
  ['an unknown compression', withEntry({ name: 'x', data: 'x', claims: { method: 14 } }), /x: is compressed in a way/],
  ['a symbolic link', withEntry({ name: 'x', data: '/etc/passwd', claims: { mode: 0o120777 } }), /x: is a link/],
  ['a folder that holds bytes', withEntry({ name: 'x/', data: 'x' }), /x\/: is a folder/],
  ['a file twice', withEntry({ name: 'visits.csv', data: 'x' }), /visits\.csv: stands in the archive twice/],
  [
    'names that differ in capitals',
    withEntry({ name: 'Visits.CSV', data: 'x' }),
    /differs from visits\.csv in capital letters/,
  ],
  [
    'names that differ in their accents’ form',
    () => handZip([...entries(), { name: 'e\u0301', data: '' }, { name: '\u00e9', data: '' }]),
    /cannot tell apart/,
  ],
  ['a file over another', withEntry({ name: 'x', data: 'x', claims: { headerOffset: 0 } }), /lies over another/],
  [
    'a file beyond the end',
    withEntry({ name: 'x', data: 'x', claims: { headerOffset: 0x7fffffff } }),
    /reaches beyond/,
  ],
  ['another name in its own place', withEntry({ name: 'x', data: 'x', localName: 'y' }), /bears another name/],
  ['a name that is not UTF-8', withEntry({ name: Uint8Array.of(0xe9, 0x2e), data: 'x' }), /not UTF-8/],
  ['an impossible ratio', withEntry({ name: 'x', data: 'x', claims: { byteCount: 4e9 } }), /not to be believed/],
  [
    'a stored file of two sizes',
    withEntry({ name: 'x', data: 'x', isStored: true, claims: { byteCount: 2 } }),
    /not to be believed/,
  ],
  ['a bomb that says what it is', withEntry({ name: 'x', data: new Uint8Array(11e6) }), /not to be believed/],
  [
    'a bomb that hides its size',
    withEntry({ name: 'x', data: new Uint8Array(5e6), claims: { byteCount: 10 } }),
    /x: holds more than it says/,
  ],
  [
    'a file that is shorter than it says',
    withEntry({ name: 'x', data: 'abc', claims: { byteCount: 9 } }),
    /x: has 3 bytes and should have 9/,
  ],
  [
    'a wrong checksum',
    withEntry({ name: 'x', data: 'abc', claims: { crc: 1 } }),
    /x: does not match its checksum \(CRC-32\)/,
  ],
  [
    'compressed nonsense',
    withEntry({ name: 'x', data: Uint8Array.of(7, 7, 7, 7), isStored: true, claims: { method: 8, byteCount: 4 } }),
    /x: (cannot be unpacked|breaks off)/,
  ],
  [
    'a compressed stream that breaks off',
    withEntry({ name: 'x', data: Uint8Array.of(4), isStored: true, claims: { method: 8, byteCount: 4 } }),
    /x: (cannot be unpacked|breaks off)/,
  ],
];

const BAD_NAMES = [
  '../x',
  'a/../../x',
  '/etc/x',
  'C:/x',
  'c:x',
  'a\\b',
  '..\\x',
  './x',
  'a//b',
  'a:b',
  'a\nb',
  'a\u0000b',
  'a\u202eb',
  `${'x'.repeat(256)}`,
  'sounds/../x',
];

const TABLES: readonly Case[] = [
  [
    'no instruments',
    without('instruments.csv'),
    /instruments\.csv: is named in datapackage\.json and is not in the archive/,
  ],
  ['an empty table', () => changed('visits.csv', () => ''), /visits\.csv, row 1: is empty/],
  ['a table in UTF-16', () => changed('visits.csv', utf16), /visits\.csv, row 1: is UTF-16/],
  [
    'a table in Latin-1',
    () => changed('visits.csv', (text) => latin1(text.replace('Ida', 'Zo\u00eb'))),
    /visits\.csv, row \d+: is not UTF-8/,
  ],
  [
    'an open quotation mark',
    replaced('instruments.csv', '"maple', '""maple'),
    /instruments\.csv, row \d+: a quotation mark/,
  ],
  [
    'a quotation mark that is never closed',
    () => changed('visits.csv', (text) => `${text}"`),
    /visits\.csv, row \d+: a quotation mark is not closed/,
  ],
  [
    'a quotation mark in the wrong place',
    replaced('instruments.csv', '"maple, five', '"maple" x, five'),
    /quotation mark stands in the wrong place/,
  ],
  [
    'too many cells',
    replaced('events.csv', /\r\n$/, ',1\r\n'),
    /events\.csv, row 2: has \d+ cells where the header names \d+/,
  ],
  ['too few cells', () => changed('events.csv', (text) => `${text}x\r\n`), /events\.csv, row 3: has 1 cells/],
  [
    'semicolons',
    () => changed('events.csv', (text) => text.replaceAll(',', ';')),
    /events\.csv, row 1, .*is not a column/,
  ],
  [
    'a missing column',
    () => changed('events.csv', (text) => text.replace('happened_on', 'further_on')),
    /further_on: is not a column/,
  ],
  [
    'a header without a column that has to be there',
    () => changed('gone.csv', () => 'id,table,row_id,stamp\r\n'),
    /gone\.csv, row 1, deleted_at: is missing/,
  ],
  ['a column twice', replaced('events.csv', 'kind', 'id'), /events\.csv, row 1, id: stands in the header twice/],
  ['a column called __proto__', replaced('events.csv', 'remark', '__proto__'), /__proto__: is not a column/],
  ['a column called constructor', replaced('events.csv', 'remark', 'constructor'), /constructor: is not a column/],
  [
    'an empty id',
    replaced('events.csv', /\n[^,]+,/, '\n,'),
    /events\.csv, row 2, id: is empty and has to have a value/,
  ],
  [
    'an id twice',
    () => changed('events.csv', (text) => text + text.slice(text.indexOf('\n') + 1)),
    /events\.csv, row 3, id: ".*" stands in this table twice/,
  ],
  [
    'a date that does not exist',
    replaced('visits.csv', '2023-01-02', '2023-02-30'),
    /visits\.csv, row 3, visited_on: has to be a date/,
  ],
  [
    'a date as a spreadsheet writes it',
    replaced('visits.csv', '2023-01-02', '02.01.2023'),
    /visited_on: has to be a date/,
  ],
  [
    'a time that is none',
    replaced('surveys.csv', /T09:00:00.000Z/, ' 9 o’clock'),
    /surveys\.csv, row 2, started_at: has to be a date and time/,
  ],
  [
    'words for a number',
    replaced('torque.csv', '9.25', 'tight'),
    /torque\.csv, row 2, torque_nm: has to be a number, got "tight"/,
  ],
  ['a decimal comma', replaced('torque.csv', '9.25', '"9,25"'), /torque_nm: .*write the decimal point as a point/],
  ['a hexadecimal number', replaced('torque.csv', '9.25', '0x10'), /torque_nm: has to be a number/],
  ['a number with a space', replaced('torque.csv', '9.25', ' 9.25'), /torque_nm: has to be a number/],
  ['the word Infinity', replaced('torque.csv', '9.25', 'Infinity'), /torque_nm: has to be a number/],
  ['half a note', replaced('torque.csv', ',60,C4,', ',60.5,C4,'), /torque\.csv, row 2, midi: has to be a whole number/],
  ['a note beyond MIDI', replaced('torque.csv', ',60,C4,', ',160,,'), /midi: has to be from 0 to 127/],
  [
    'a note and another name',
    replaced('torque.csv', ',60,C4,', ',60,C5,'),
    /midi: is "60" and the note beside it is "C5"/,
  ],
  ['a fifth string', replaced('torque.csv', ',C4,1,', ',C4,5,'), /string_position: has to be one of 0, 1, 2, 3/],
  [
    'an unknown kind',
    replaced('events.csv', 'restrung', 'restrang'),
    /events\.csv, row 2, kind: has to be one of restrung/,
  ],
  ['yes for true', replaced('instruments.csv', ',false,', ',no,'), /is_demonstration: has to be true or false/],
  ['a list that is not JSON', replaced('instruments.csv', '"[52,71]"', '52;71'), /struts_after_midi: is not JSON/],
  [
    'an object where a list should be',
    replaced('instruments.csv', '"[52,71]"', '{}'),
    /struts_after_midi: has to be a list/,
  ],
  [
    'a visit to nobody',
    replaced('visits.csv', /\n([^,]+),[^,]+,/, '\n$1,nobody,'),
    /visits\.csv, row 2, instrument_id: names "nobody", which is not in instruments\.csv/,
  ],
  [
    'a survey of no visit',
    replaced('surveys.csv', /\n([^,]+),[^,]+,/, '\n$1,nobody,'),
    /surveys\.csv, row 2, visit_id: names "nobody"/,
  ],
  [
    'a sound of no take',
    replaced('sounds.csv', /\n[^,]+,/, '\nnobody,'),
    /sounds\.csv, row 2, id: names "nobody", which is not in readings\.csv/,
  ],
  [
    'a partial of no take',
    replaced('partials.csv', /\n[^,]+,/, '\nnobody,'),
    /partials\.csv, row 2: does not follow the order of readings\.csv/,
  ],
  [
    'partials in another order',
    () => changed('partials.csv', reversedRows),
    /partials\.csv, row \d+: does not follow the order/,
  ],
  [
    'components in another order',
    () => changed('components.csv', reversedRows),
    /components\.csv, row \d+: does not follow the order/,
  ],
  [
    'a partial twice',
    replaced('partials.csv', ',0,2,', ',0,1,'),
    /partials\.csv, row 3, partial_number: 1 stands twice/,
  ],
  ['a partial number 0', replaced('partials.csv', ',0,1,', ',0,0,'), /partial_number: has to be at least 1/],
  [
    'earlier readings that skip one',
    replaced('earlier-readings.csv', ',1,', ',7,'),
    /earlier-readings\.csv, row 2: does not follow the order/,
  ],
  [
    'further fields that are no JSON',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, ',{no}\r\n')),
    /further: is not JSON/,
  ],
  [
    'further fields in a list',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, ',[1]\r\n')),
    /further: has to be an object/,
  ],
  [
    'further fields called __proto__',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, ',"{""__proto__"":{""a"":1}}"\r\n')),
    /further: has a field called __proto__/,
  ],
  [
    'further fields that repeat a column',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, ',"{""id"":5}"\r\n')),
    /further: repeats id/,
  ],
  [
    'further fields nested without end',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, `,${'['.repeat(5000)}${']'.repeat(5000)}\r\n`)),
    /further: is nested too deeply/,
  ],
  [
    'a mark that README.txt does not know',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, ',"{""x"":{""@secret"":1}}"\r\n')),
    /further: has a field @secret/,
  ],
  [
    'bytes that are no digits',
    () => changed('events.csv', (text) => text.replace(/,\r\n$/, ',"{""x"":{""@bytes"":""xyz""}}"\r\n')),
    /hexadecimal/,
  ],
  [
    'a clip that is not there',
    replaced('sounds.csv', /sounds\/[^,]+/, 'sounds/none.flac'),
    /sounds\.csv, row 2, path: names "sounds\/none\.flac", which is not a file/,
  ],
  ['a clip from elsewhere', replaced('sounds.csv', /sounds\/[^,]+/, 'README.txt'), /path: names "README\.txt"/],
  [
    'a clip that is a text',
    () => packed(new Map(files).set([...files.keys()].find((name) => name.startsWith('sounds/'))!, 'la la la')),
    /does not begin as a file of its kind does/,
  ],
  [
    'a clip that no row names',
    () => changed('sounds.csv', (text) => text.slice(0, text.indexOf('\n') + 1)),
    /sounds\/.*: is named by no row/,
  ],
];

function reversedRows(text: string): string {
  const [header, ...rows] = text.trimEnd().split('\r\n');
  return `${[header, ...rows.reverse()].join('\r\n')}\r\n`;
}

const DESCRIPTIONS: readonly Case[] = [
  ['an empty description', () => changed('datapackage.json', () => ''), /datapackage\.json: is not JSON/],
  ['a description that is no JSON', () => changed('datapackage.json', () => '{"a"'), /datapackage\.json: is not JSON/],
  ['a description in UTF-16', () => changed('datapackage.json', utf16), /datapackage\.json: is not UTF-8/],
  ['a description that is null', () => changed('datapackage.json', () => 'null'), /some other Data Package/],
  ['some other Data Package', () => changed('datapackage.json', () => '{"resources":[]}'), /some other Data Package/],
  [
    'a field called __proto__',
    () => changed('datapackage.json', () => '{"__proto__":{"stillpin":1}}'),
    /field called __proto__/,
  ],
  [
    'a newer version',
    described((json) => ({ ...json, stillpin: { archiveVersion: 2 }, resources: 'unlike anything known' })),
    /written by a newer program \(archive version 2; .*nothing was changed/,
  ],
  ['version 0', described((json) => ({ ...json, stillpin: { archiveVersion: 0 } })), /some other Data Package/],
  ['no resources', described(({ resources: _, ...json }) => json), /datapackage\.json: resources/],
  [
    'a resource in several files',
    described((json) => void Object.assign(json.resources[0]!, { path: ['a.csv', 'b.csv'] })),
    /resources\.0\.path: has to be the name of one file/,
  ],
  [
    'a resource elsewhere on the network',
    described((json) => void Object.assign(json.resources[0]!, { path: 'https://example.org/a.csv' })),
    /datapackage\.json: has a colon in a name/,
  ],
  [
    'a resource outside the archive',
    described((json) => void Object.assign(json.resources[0]!, { path: '../a.csv' })),
    /leads outside the archive/,
  ],
  [
    'a resource twice',
    described((json) => void json.resources.push(json.resources[0]!)),
    /names the resource "instruments" twice/,
  ],
  [
    'an unknown table',
    described((json) => void json.resources.push({ name: 'moods', path: 'moods.csv', type: 'table' })),
    /a table that this program does not know \("moods"\)/,
  ],
  [
    'a checksum of another kind',
    described((json) => void Object.assign(json.resources[0]!, { hash: 'md5:00' })),
    /hash: has to be sha256/,
  ],
  [
    'a wrong checksum',
    described((json) => void Object.assign(json.resources[0]!, { hash: `sha256:${'0'.repeat(64)}` })),
    /instruments\.csv: does not match its checksum \(SHA-256\)/,
  ],
  [
    'a wrong size',
    described((json) => void Object.assign(json.resources[0]!, { bytes: 7 })),
    /instruments\.csv: has \d+ bytes, and datapackage\.json says 7/,
  ],
  [
    'a negative size',
    described((json) => void Object.assign(json.resources[0]!, { bytes: -7 })),
    /resources\.0\.bytes/,
  ],
];

describe('an archive is refused, and what is wrong with it is said', () => {
  const badNames = BAD_NAMES.map(
    (name): Case => [
      `the name ${JSON.stringify(name.slice(0, 20))}`,
      withEntry({ name, data: 'x' }),
      /there is (a|an) .*not to be trusted/,
    ],
  );
  it.each([...CONTAINERS, ...badNames, ...TABLES])('%s', async (_, make, says) => {
    const report = await check(make());
    expect(said(report)).toMatch(says);
    expect(report.isWhole).toBe(false);
  });

  it.each(DESCRIPTIONS)('%s', async (what, make, says) => {
    const bytes = what.startsWith('a wrong') ? withWrongClaim(what, make) : make();
    const report = await check(bytes);
    expect(said(report)).toMatch(says);
    expect(report.isWhole).toBe(false);
  });

  it('a file that was changed since the archive was written', async () => {
    const visits = textOf('visits.csv').replace('45', '46');
    const report = await check(packed(new Map(files).set('visits.csv', visits), true));
    expect(said(report)).toMatch(
      /visits\.csv: does not match its checksum \(SHA-256\).*take hash and bytes of this file out/,
    );
  });
});

/** Size and checksum are stripped by `packed`; here they are what is looked at. */
function withWrongClaim(what: string, make: () => Uint8Array): Uint8Array {
  make();
  const json = JSON.parse(textOf('datapackage.json'));
  Object.assign(json.resources[0], what.endsWith('size') ? { bytes: 7 } : { hash: `sha256:${'0'.repeat(64)}` });
  return packed(new Map(files).set('datapackage.json', JSON.stringify(json)), true);
}

describe('an archive is read all the same', () => {
  const read = async (bytes: Uint8Array) => {
    const report = await check(bytes);
    expect(said(report)).toBe('');
    return report;
  };

  it('where somebody unpacked it and packed the folder again, on whatever system', async () => {
    const inFolder = entries().map(({ name, data }) => ({ name: `My records/${String(name)}`, data }));
    await read(
      handZip([
        { name: 'My records/', data: '' },
        ...inFolder,
        { name: '__MACOSX/My records/._visits.csv', data: 'x' },
        { name: 'My records/.DS_Store', data: 'x' },
      ]),
    );
  });

  it('with byte order marks, with line feeds alone, without the last line break, with columns in another order', async () => {
    const loose = new Map(files);
    for (const [name, text] of files)
      if (name.endsWith('.csv')) loose.set(name, `\ufeff${String(text).replaceAll('\r\n', '\n').trimEnd()}`);
    loose.set('gone.csv', 'deleted_at,stamp,row_id,table,id\n2024-01-01T00:00:00Z,"{""a"":3}",x,visits,visits/x');
    const report = await read(packed(loose));
    expect(report.counts).toMatchObject({ takes: 2, gone: 1 });
  });

  it('with a file in it that is none of its own, and says so', async () => {
    const report = await read(handZip([...entries(), { name: 'notes.txt', data: 'mine' }]));
    expect(report.warnings).toEqual(['notes.txt is not named in datapackage.json and was not read']);
  });
});

describe('whatever bytes an archive is changed by', () => {
  it('it is read, or refused with a reason', async () => {
    const seeds = Array.from({ length: 80 }, (_, seed) => seed);
    const refused = [];
    for (const seed of seeds) {
      const report = await check(mutated(archive, seed));
      if (!report.isWhole) refused.push({ seed, messages: report.complaints.map(({ message }) => message) });
    }
    expect(refused.length).toBeGreaterThan(40);
    expect(refused.filter(({ messages }) => messages.length === 0 || messages.includes(''))).toEqual([]);
  });

  it('a table of it is read, or refused with a reason', async () => {
    const names = [...files.keys()].filter((name) => name.endsWith('.csv'));
    let refusedCount = 0;
    for (let seed = 0; seed < 40; seed++) {
      const name = names[seed % names.length]!;
      const bytes = packed(new Map(files).set(name, mutated(new TextEncoder().encode(textOf(name)), seed)));
      const report = await check(bytes);
      if (report.isWhole) await expect(rowsOf(bytes), `seed ${seed}`).resolves.toBeDefined();
      else {
        refusedCount += 1;
        expect(said(report), `seed ${seed}`).toMatch(/\.csv/);
        await expect(rowsOf(bytes), `seed ${seed}`).rejects.toThrow(/\.csv/);
      }
    }
    expect(refusedCount).toBeGreaterThan(10);
  });
});

/** Some bytes changed, taken out, put in or doubled. */
function mutated(bytes: Uint8Array, seed: number): Uint8Array {
  const { uniform } = seededRandom(seed + 1);
  const below = (limit: number) => Math.floor(uniform() * limit);
  let result = bytes.slice();
  for (let count = 1 + below(4); count > 0; count--) {
    const at = below(result.length);
    const kind = below(4);
    if (kind === 0) result[at] = below(256);
    else if (kind === 1) result = joined(result.slice(0, at), result.slice(at + 1 + below(40)));
    else if (kind === 2)
      result = joined(
        result.slice(0, at),
        Uint8Array.from({ length: 1 + below(9) }, () => below(256)),
        result.slice(at),
      );
    else result = joined(result.slice(0, at), result.slice(below(result.length), result.length));
  }
  return result;
}
