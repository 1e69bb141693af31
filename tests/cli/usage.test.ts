import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runStillpin } from './runStillpin.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-'));
  mkdirSync(join(folder, 'a folder'));
  writeFileSync(join(folder, 'empty.wav'), '');
  writeFileSync(join(folder, 'letter.wav'), 'Dear reader');
  writeFileSync(join(folder, 'line\nbreak.wav'), 'Dear reader');
  writeFileSync(join(folder, 'locked.wav'), 'RIFF');
  chmodSync(join(folder, 'locked.wav'), 0);
});
afterAll(() => rmSync(folder, { recursive: true }));

const WRONG: readonly (readonly [args: string[], says: RegExp])[] = [
  [[], /no command given.*--help/],
  [['tune'], /no command "tune".*--help/],
  [['measure'], /at least one recording/],
  [['measure', '--json'], /at least one recording/],
  [['measure', 'x.wav', '--loud'], /unknown option --loud/],
  [['measure', 'x.wav', '-x'], /unknown option -x/],
  [['measure', 'x.wav', '--pitch'], /--pitch.*missing/],
  [['measure', 'x.wav', '--pitch', 'high'], /--pitch.*380 to 480.*"high"/],
  [['measure', 'x.wav', '--pitch', '379.9'], /"379\.9"/],
  [['measure', 'x.wav', '--pitch', '481'], /"481"/],
  [['measure', 'x.wav', '--pitch', 'NaN'], /"NaN"/],
  [['measure', 'x.wav', '--pitch', '0x1b8'], /"0x1b8"/],
  [['measure', 'x.wav', '--pitch='], /got ""/],
  [['measure', 'x.wav', '--note', 'H4'], /--note.*"H4"/],
  [['measure', 'x.wav', '--note', 'A9'], /--note.*"A9"/],
  [['measure', 'x.wav', '--note', ''], /--note.*""/],
  [['measure', 'x.wav', '--string', '4'], /--string.*"4"/],
  [['measure', 'x.wav', '--string', 'left'], /--string.*"left"/],
  [['measure', 'x.wav', '--json=yes'], /--json.*does not take/],
  [['measure', 'missing.wav'], /cannot read missing\.wav.*no such file/],
  [['measure', 'letter.wav/x.wav'], /cannot read.*not a folder/],
  [['measure', 'a folder'], /cannot read a folder.*it is a folder/],
  [['measure', 'empty.wav'], /cannot read empty\.wav.*empty/],
  [['measure', 'letter.wav', '--json'], /cannot read letter\.wav.*looks like text/],
  [['measure', 'line\nbreak.wav'], /cannot read line\\nbreak\.wav/],
  [['survey'], /survey needs a recording/],
  [['survey', 'a.wav', 'b.wav'], /one recording, got 2/],
  [['survey', 'x.wav', '--compass', 'C8-A0'], /--compass.*"C8-A0"/],
  [['survey', 'x.wav', '--compass', 'A0'], /--compass.*"A0"/],
  [['survey', 'x.wav', '--note', 'A4'], /unknown option --note/],
  [['survey', 'letter.wav'], /cannot read letter\.wav/],
  [['survey', 'missing.wav', '--json'], /cannot read missing\.wav/],
];

describe('wrong usage and unreadable input end with status 2 and one line that says what to do', () => {
  it.each(WRONG)('%j', (args, says) => {
    const { status, stdout, stderr } = runStillpin(args, folder);
    expect(stderr).toMatch(says);
    expect(stderr).toMatch(/^stillpin: [^\n]+\n$/);
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });

  // Root may read everything, so there is nothing to see for it.
  it.skipIf(process.getuid?.() === 0)('a file that may not be read', () => {
    const { status, stderr } = runStillpin(['measure', 'locked.wav'], folder);
    expect(stderr).toMatch(/^stillpin: cannot read locked\.wav: reading it is not permitted[^\n]+\n$/);
    expect(status).toBe(2);
  });
});

describe('--help', () => {
  it.each([[['--help']], [['-h']], [['help']]])('%j lists the commands', (args) => {
    const { status, stdout, stderr } = runStillpin(args, folder);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    for (const name of ['measure', 'survey', 'drift', 'scale', 'report', 'archive'])
      expect(stdout).toContain(`  ${name} `);
  });

  it.each(['measure', 'survey'])('explains %s and its options, even beside wrong ones', (name) => {
    const { status, stdout, stderr } = runStillpin([name, '--nonsense', '--help'], folder);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    for (const word of ['Usage:', '--pitch', '--string', '--json']) expect(stdout).toContain(word);
  });

  it('after -- is a file name', () => {
    expect(runStillpin(['measure', '--', '--help'], folder)).toMatchObject({ status: 2, stdout: '' });
  });
});
