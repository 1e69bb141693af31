import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeArchive } from '../../src/files/archive/writeArchive.ts';
import type { PhotographId } from '../../src/piano/ids.ts';
import { demonstrationRecords } from '../../src/records/demonstration/demonstrationRecords.ts';
import { runForJson, runStillpin } from './runStillpin.ts';

let folder: string;

/** Two invented instruments, the takes of one of them, every third note, and a photograph. */
async function exampleArchive(): Promise<Uint8Array> {
  const [holding, failing] = demonstrationRecords(1908);
  if (!holding || !failing) throw new Error('the demonstration has fewer instruments than it had');
  const sets = [holding, failing];
  const takes = failing.takes.filter(({ midi }) => midi % 3 === 0);
  const [instrument] = failing.instruments;
  if (!instrument) throw new Error('a set without an instrument');
  const id = '00000000-0000-4000-8000-000000000001' as PhotographId;
  const photograph = {
    id,
    instrumentId: instrument.id,
    visitId: null,
    midi: null,
    stringPosition: null,
    takenAt: '2024-03-05T10:00:00Z',
    addedAt: '2024-03-05T11:00:00Z',
    caption: 'Pins beside the strut & above',
    widthPx: 1,
    heightPx: 1,
    mediaType: 'image/png' as const,
  };
  const bytes = Uint8Array.from(Buffer.from(DOT, 'base64'));
  const pieces: Uint8Array[] = [];
  const contents = {
    instruments: sets.flatMap((set) => set.instruments),
    events: sets.flatMap((set) => set.events),
    visits: sets.flatMap((set) => set.visits),
    surveys: sets.flatMap((set) => set.surveys),
    takes: () => takes,
    photographs: [photograph],
    photographFiles: [{ id, instrumentId: instrument.id, bytes }],
  };
  await writeArchive(contents, { createdAt: '2026-08-01T08:00:00Z', programVersion: '0.1.0' }, (piece) => {
    pieces.push(piece.slice());
  });
  return Buffer.concat(pieces);
}

/** One grey pixel as PNG: IHDR 1 × 1, 8 bits, greyscale; IDAT zlib.compress(b'\0\x80'); written with Python's zlib. */
const DOT = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-'));
  writeFileSync(join(folder, 'records.zip'), await exampleArchive());
  writeFileSync(join(folder, 'letter.zip'), 'Dear reader');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('report', () => {
  it('writes one page that needs no script and no other file, with the verdict, the chart and the photograph', () => {
    const args = ['report', 'records.zip', '--instrument', 'the school hall upright', '--out', 'page.html'];
    const { status, stderr, stdout } = runStillpin([...args, '--remark', 'Eased <two> keys'], folder);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('written to page.html');
    const html = readFileSync(join(folder, 'page.html'), 'utf8');
    expect(html).toContain('The school hall upright');
    expect(html).not.toContain('music room');
    expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org\/2000\/svg)|\burl\(/);
    expect(html).toContain('Eased &lt;two&gt; keys');
    expect(html).toContain(`src="data:image/png;base64,${DOT}"`);
    expect(html).toContain('alt="Pins beside the strut &amp; above"');
    expect(html).toMatch(/<svg[^>]*role="img"/);
  });

  it('says in JSON what stands on the page, and leaves out what is not wanted', () => {
    const args = ['report', 'records.zip', '--instrument', 'The school hall upright', '--out', 'short.html'];
    const { status, json } = runForJson([...args, '--leave-out', 'course,photographs', '--photographs', '1'], folder);
    expect(status).toBe(0);
    expect(json).toMatchObject({ out: 'short.html', course: null, photographs: null });
    expect(json.verdict.state).toBe('giving way');
    expect(json.work.rows).toHaveLength(1);
    expect(readFileSync(join(folder, 'short.html'), 'utf8')).not.toContain('<svg');
  });

  it('writes the page in German, figures and dates too', () => {
    const args = ['report', 'records.zip', '--instrument', 'The school hall upright', '--out', 'seite.html'];
    expect(runStillpin([...args, '--language', 'de', '--photographs', '0'], folder).status).toBe(0);
    const html = readFileSync(join(folder, 'seite.html'), 'utf8');
    expect(html).toContain('<html lang="de">');
    expect(html).toContain('Ein Teil gibt nach');
    expect(html).toMatch(/sinken von selbst, um etwa \d,\d\u00a0Cent im Jahr/);
    expect(html).toContain('Besuch am 22. Juli 2026');
    // Names and remarks stay as they were typed; what the page says itself is German.
    expect(html).not.toMatch(/\bcents\b|\bstrings\b|\bvisits?\b|What we recommend/);
  });

  it.each([
    [['report'], /needs an archive/],
    [['report', 'records.zip'], /--out must name/],
    [['report', 'records.zip', '--out', 'x.html'], /--instrument.*"The music room grand".*"The school hall upright"/],
    [
      ['report', 'records.zip', '--instrument', 'The attic square', '--out', 'x.html'],
      /"The attic square" is not in records\.zip/,
    ],
    [['report', 'records.zip', '--out', 'x.html', '--language', 'la'], /--language.*"la"/],
    [['report', 'letter.zip', '--out', 'x.html'], /cannot read letter\.zip/],
    [['report', 'missing.zip', '--out', 'x.html'], /no such file/],
    [['report', 'records.zip', '--out', 'x.html', '--leave-out', 'verdict'], /--leave-out.*got "verdict"/],
    [['report', 'records.zip', '--out', 'x.html', '--photographs', '21'], /--photographs.*"21"/],
    [
      ['report', 'records.zip', '--instrument', 'The music room grand', '--out', 'nowhere/x.html'],
      /there is no such folder; make it first/,
    ],
  ])('ends with status 2 and one line that says what to do: %j', (args, says) => {
    const { status, stdout, stderr } = runStillpin(args, folder);
    expect(stderr).toMatch(says);
    expect(stderr).toMatch(/^stillpin: [^\n]+\n$/);
    expect(stdout).toBe('');
    expect(status).toBe(2);
    expect(existsSync(join(folder, 'x.html'))).toBe(false);
  });
});
