import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readEventsCsv, readHistoryCsv } from '../../src/files/historyCsv.ts';
import { readScheduleCsv } from '../../src/files/scheduleCsv.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { faultOf, readSound } from './audio/readSound.ts';

const SEEDS = Array.from({ length: 40 }, (_, seed) => seed);

const HISTORY = `visit_date,stage,rh_percent,temp_c,note,string,cents,cents_u
2019-03-02,as-left,45,20.5,A4,1,0.1,0.05
2019-10-11,as-found,60,,A4,1,4.2,
2019-10-11,as-found,60,,F#3,2,-1.5,0.1
`;
const EVENTS = `date,kind,from_note,to_note,remark
2016-05-01,restrung,A0,C8,"all of it, with new pins"
2018-02-03,pin-replaced,C5,,
`;
const SCHEDULE = `note,strings,speaking_length_mm,wire_diameter_mm,core_diameter_mm,wrap,wire_grade
A0,1,1200,4.5,1.4,copper,
A4,3,400.5,1,,,
`;

/** What people and programs do to a table: cells, lines and signs changed, doubled, taken out. */
function mangled(text: string, seed: number): string {
  const { uniform } = seededRandom(seed + 1);
  const below = (limit: number) => Math.floor(uniform() * limit);
  const pieces = [
    '"',
    ',',
    ';',
    '\t',
    '\n',
    '\r',
    '\0',
    '\ufeff',
    '__proto__',
    'constructor',
    '1e999',
    'NaN',
    '-',
    '=1+1',
    '2019-02-30',
    '\ud800',
    'ﬀ',
  ];
  let result = text;
  for (let count = 1 + below(3); count > 0; count--) {
    const [at, to] = [below(result.length), below(result.length)];
    const way = below(3);
    const put = way === 0 ? (pieces[below(pieces.length)] ?? '') : way === 1 ? '' : result.slice(at, to);
    result = result.slice(0, at) + put + result.slice(way === 1 ? at + 1 + below(30) : at);
  }
  return result;
}

describe.each([
  ['a history', readHistoryCsv, HISTORY],
  ['events', readEventsCsv, EVENTS],
  ['a schedule', readScheduleCsv, SCHEDULE],
] as const)('%s that was mangled', (_, read, text) => {
  it('was sound before', () => expect(read(text)).toMatchObject({ ok: true }));

  it.each(SEEDS)('is read, or refused with the line and a reason (seed %i)', (seed) => {
    const outcome = read(mangled(text, seed));
    if (outcome.ok) for (const row of outcome.rows) for (const value of Object.values(row)) expect(value).not.toBeNaN();
    else expect(outcome.message).toMatch(/line \d+|empty|holds no/);
  });
});

describe.each(['a4-one-string.wav', 'a4-one-string.flac', 'a4-one-string.ogg', 'a4-one-string.mp3'])(
  '%s that was mangled',
  (name) => {
    const whole = readFileSync(new URL(`../../sample-audio/${name}`, import.meta.url));

    it.each(SEEDS.slice(0, 8))('is read, or refused with a reason (seed %i)', async (seed) => {
      const { uniform } = seededRandom(seed + 1);
      const bytes = new Uint8Array(whole.subarray(0, 20_000));
      for (let count = 0; count < 6; count++)
        bytes[Math.floor(uniform() ** 3 * bytes.length)] = Math.floor(uniform() * 256);
      const fault = await faultOf(bytes);
      if (fault) expect(fault.message).not.toBe('');
      else expect((await readSound(bytes)).samples.every((sample) => Number.isFinite(sample))).toBe(true);
    });
  },
);
