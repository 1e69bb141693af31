import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommandLine } from '../../src/cli/runCommandLine.ts';
import { archiveOf, exampleRows, rowsOf } from '../files/archive/exampleArchive.ts';
import { runForJson } from './runStillpin.ts';

const rows = exampleRows();
let folder: string;
let bytes: Uint8Array;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-archive-'));
  bytes = await archiveOf(rows);
  writeFileSync(join(folder, 'all.zip'), bytes);
  writeFileSync(join(folder, 'cut.zip'), bytes.slice(0, bytes.length - 30));
  const flipped = bytes.slice();
  flipped[2000]! ^= 0xff;
  writeFileSync(join(folder, 'flipped.zip'), flipped);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** In this process, which is faster; what the process makes of the status is tested with the other commands. */
async function archive(...args: string[]): Promise<{ status: number; stdout: string; stderr: string }> {
  const [stdout, stderr]: [string[], string[]] = [[], []];
  const terminal = {
    print: (text: string) => void stdout.push(`${text}\n`),
    complain: (line: string) => void stderr.push(`${line}\n`),
    progress: () => undefined,
    endProgress: () => undefined,
  };
  const inFolder = args.map((arg) => (arg.endsWith('.zip') ? join(folder, arg) : arg));
  const status = await runCommandLine(['archive', ...inFolder], terminal);
  return { status, stdout: stdout.join(''), stderr: stderr.join('').replaceAll(`${folder}/`, '') };
}
const rowsIn = (name: string) => rowsOf(readFileSync(join(folder, name)));

describe('archive check', () => {
  it('says what is in a whole archive', async () => {
    const { status, stdout, stderr } = await archive('check', 'all.zip');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/all\.zip: whole and readable\n/);
    expect(stdout).toMatch(/^takes +2$/m);
    expect(stdout).toMatch(/^The attic upright +2 +2021-05-04 +2023-01-02 +2$/m);
  });

  it('says the same as JSON', () => {
    const { status, json } = runForJson(['archive', 'check', 'all.zip'], folder);
    expect(status).toBe(0);
    expect(json).toMatchObject({
      whole: true,
      complaints: [],
      bytes: bytes.length,
      tables: { instruments: 2, takes: 2, partials: 4, rivals: 1 },
      clips: { count: 2, bytes: 14 },
      photographs: { count: 1, bytes: 5 },
    });
    expect(json.instruments[0]).toMatchObject({ name: 'The attic upright', visitCount: 2, takeCount: 2 });
  });

  it.each([
    ['cut.zip', /cut short/, /^$/],
    ['flipped.zip', /README\.txt/, /not whole: 1 complaint\n/],
  ])('says what is wrong with %s, once and with status 2', async (file, says, prints) => {
    const { status, stdout, stderr } = await archive('check', file);
    expect(status).toBe(2);
    expect(stderr).toMatch(/^stillpin: [^\n]+\n$/);
    expect(stderr).toMatch(says);
    expect(stdout).toMatch(prints);
    expect(stdout).not.toMatch(says);
  });
});

describe('archive export', () => {
  it('writes one instrument with all that is its, without owners', async () => {
    const { status, stdout } = await archive(
      'export',
      'all.zip',
      '--instrument',
      'the ATTIC upright',
      '--without-owners',
      '--out',
      'part.zip',
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/part\.zip: 1 instrument, 2 visits, 2 takes, 2 clips, 1 photograph/);
    const part = await rowsIn('part.zip');
    const { ownerName: _, ownerAddress: __, ...instrument } = rows.instruments[0]!;
    expect(part.instruments).toEqual([instrument]);
    for (const kind of ['visits', 'surveys', 'takes', 'sounds', 'torques', 'photographFiles'] as const)
      expect(part[kind]).toEqual(rows[kind]);
    expect(JSON.stringify(part)).not.toContain('Ada');
    expect(readdirSync(folder).filter((name) => /\.part/.test(name))).toEqual([]);
  });

  it('overwrites nothing, and leaves nothing half written', async () => {
    const before = readFileSync(join(folder, 'all.zip'));
    expect(await archive('export', 'all.zip', '--out', 'all.zip')).toMatchObject({ status: 2, stdout: '' });
    expect(await archive('export', 'cut.zip', '--out', 'new.zip')).toMatchObject({ status: 2, stdout: '' });
    expect((await archive('export', 'all.zip', '--out', 'no/new.zip')).stderr).toMatch(/no such folder/);
    expect(readFileSync(join(folder, 'all.zip'))).toEqual(before);
    expect(readdirSync(folder).filter((name) => /new|\.part/.test(name))).toEqual([]);
  });
});

describe('archive import', () => {
  it('puts archives together without losing anything of either', async () => {
    const changed = rows.visits.map((visit) => ({ ...visit, remark: 'edited', stamp: { tablet: 1 } }));
    writeFileSync(join(folder, 'tablet.zip'), await archiveOf({ ...rows, visits: changed, takes: [], sounds: [] }));
    writeFileSync(join(folder, 'bare.zip'), await archiveOf(rows, { leaveOut: ['owners', 'visitors', 'sounds'] }));
    expect(await archive('import', 'bare.zip', 'tablet.zip', 'all.zip', '--into', 'records.zip')).toMatchObject({
      status: 0,
      stderr: '',
    });
    const merged = await rowsIn('records.zip');
    expect({ ...merged, rivals: [] }).toEqual({ ...rows, visits: changed, rivals: [] });
    expect(merged.rivals).toMatchObject([{ rowId: rows.instruments[0]?.id, row: { remark: 'another' } }]);
    expect((await archive('import', 'all.zip', '--into', 'records.zip')).status).toBe(0);
    expect(await rowsIn('records.zip')).toEqual(merged);
  });

  it('changes nothing where one of the files is not whole', async () => {
    expect((await archive('import', 'all.zip', '--into', 'safe.zip')).status).toBe(0);
    const before = readFileSync(join(folder, 'safe.zip'));
    const { status, stderr } = await archive('import', 'all.zip', 'flipped.zip', '--into', 'safe.zip');
    expect(status).toBe(2);
    expect(stderr).toMatch(/nothing was changed: flipped\.zip/);
    expect(readFileSync(join(folder, 'safe.zip'))).toEqual(before);
  });
});

it.each([
  [['archive'], /check, export or import, got nothing/],
  [['archive', 'mend'], /got "mend"/],
  [['archive', 'check'], /one FILE\.zip, got 0/],
  [['archive', 'check', 'missing.zip'], /no such file/],
  [['archive', 'export', 'all.zip'], /--out/],
  [
    ['archive', 'export', 'all.zip', '--instrument', 'nobody', '--out', 'x.zip'],
    /no instrument "nobody" in all\.zip; there are The attic upright/,
  ],
  [['archive', 'import', '--into', 'x.zip'], /at least one/],
  [['archive', 'import', 'all.zip'], /--into/],
  [['archive', 'import', 'all.zip', '--into', 'all.zip'], /into itself/],
])('%j is wrong usage', async ([, ...args], says) => {
  const { status, stdout, stderr } = await archive(...args);
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(says);
  expect(stderr).toMatch(/^stillpin: [^\n]+\n$/);
});
