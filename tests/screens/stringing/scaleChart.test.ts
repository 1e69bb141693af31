import { describe, expect, it } from 'vitest';
import { comparedNotes, comparisonSentences, comparisonSeries } from '../../../src/screens/stringing/comparisonRows.ts';
import { scaleMarks, scaleSeries } from '../../../src/screens/stringing/scaleChart.ts';
import { cautionSentences, jumpSentence, tablesSentence } from '../../../src/screens/stringing/scaleWords.ts';
import { triedSchedule } from '../../../src/screens/stringing/tryChange.ts';
import { analyseScale } from '../../../src/stringing/scale/analyseScale.ts';
import { compareScales } from '../../../src/stringing/scale/compareScales.ts';
import { setCells } from '../../../src/stringing/schedule/editSchedule.ts';
import { schedule88 } from './schedule88.ts';

const rows = schedule88();
const at440 = (own: typeof rows) => analyseScale(own, { pitchStandardHz: 440 });
const plain = (text: string | null | undefined) => (text ?? '').replace(/[\u00a0\u2009]/g, ' ');

describe('the chart of a scale', () => {
  it('gives wound and plain strings signs of their own, in the unit of the axis', () => {
    const series = scaleSeries(at440(rows), 'breaking');
    expect(series.map(({ name, points }) => [name, points.length])).toEqual([
      ['plain wire', 88 - 22],
      ['wound', 22],
    ]);
    const shares = series.flatMap(({ points }) => points.map(({ y }) => y));
    expect(Math.min(...shares)).toBeGreaterThan(10);
    expect(Math.max(...shares)).toBeLessThan(100);
  });

  it('shows what rests on interpolated cells, and a wire that is one size off as a step', () => {
    const marked = rows.map((row) => (row.midi === 60 ? { ...row, interpolated: ['speakingLengthMm'] } : row));
    const odd = setCells(marked, [{ midi: 80, change: { wireDiameterMm: 1.2 } }]);
    const series = scaleSeries(at440(odd), 'tension');
    const notesOf = (name: string) => series.find((one) => one.name === name)?.points.map(({ x }) => x);
    expect(notesOf('rests on interpolated cells')).toEqual([60]);
    expect(notesOf('steps away from the note below')).toEqual(expect.arrayContaining([80, 81]));
  });

  it('marks the breaks that the schedule shows beside those of the instrument', () => {
    const instrument = { strutsAfterMidi: [64], bassBridgeTopMidi: null } as unknown as Parameters<
      typeof scaleMarks
    >[0];
    expect(scaleMarks(instrument, rows).map(({ x }) => x)).toEqual([42.5, 64.5]);
  });
});

describe('the words of a scale', () => {
  it('gather the notes that share a caution', () => {
    const bare = rows.map((row) => ({ ...row, wireGrade: row.midi < 24 ? null : row.wireGrade }));
    const sentences = cautionSentences(at440(bare).cautions);
    expect(sentences.some((sentence) => sentence.startsWith('A0 to B0: no strength table'))).toBe(true);
    expect(plain(tablesSentence(at440(bare), []))).toMatch(
      /^Strength from: EN 10270-1 SM for C1 to F♯2 \(.*\); ASTM A228 for G2 to C8/,
    );
  });

  it('name what is missing, for all notes that lack the same', () => {
    const lacking = setCells(
      rows,
      [60, 61].map((midi) => ({ midi, change: { speakingLengthMm: null } })),
    );
    expect(cautionSentences(at440(lacking).cautions).at(-1)).toBe('C4, C♯4: speaking length missing.');
  });

  it('tell a step by what makes it', () => {
    const jump = {
      fromMidi: 42,
      toMidi: 43,
      tensionChange: -0.4,
      ofLength: 0.021,
      ofMass: -0.41,
      isAtBreak: true,
      standsOut: true,
    };
    expect(plain(jumpSentence(jump))).toBe('F♯2 to G2: −40 % (+2.1 % by length, −41 % by wire), at a break');
  });
});

describe('two schedules side by side', () => {
  const tried = triedSchedule({ rows, pitchStandardHz: 440 }, { fromMidi: 90, toMidi: 108, kind: 'size', sizes: 2 });
  const comparison = compareScales(at440(rows), at440(tried.rows));
  const notes = comparedNotes(comparison, rows, tried.rows);

  it('name the notes that differ, with both figures and the growth', () => {
    expect(notes.filter(({ isDifferent }) => isDifferent).map(({ midi }) => midi)).toEqual(
      Array.from({ length: 19 }, (_, index) => 90 + index),
    );
    const top = notes.find(({ midi }) => midi === 108);
    expect(plain(top?.wire)).toBe('0.775 mm → 0.875 mm');
    // (0.875/0.775)² − 1 = 27.5 %
    expect(plain(top?.figures.tension)).toBe('702 N → 895 N (+27 %)');
    expect(plain(top?.figures.stress)).not.toContain('→');
  });

  it('warn of what grows', () => {
    const sentences = comparisonSentences(comparison).map(plain);
    expect(sentences.some((one) => /^All strings together: \+\d/.test(one))).toBe(true);
    expect(comparisonSentences(compareScales(at440(rows), at440(rows)))).toEqual([]);
  });

  it('warn of strings that come nearer to breaking', () => {
    const longer = triedSchedule(
      { rows, pitchStandardHz: 440 },
      { fromMidi: 108, toMidi: 108, kind: 'length', share: 0.2 },
    );
    const sentences = comparisonSentences(compareScales(at440(rows), at440(longer.rows)));
    expect(sentences.at(-1)).toMatch(/^C8: works nearer to breaking/);
  });

  it('draw both', () => {
    const series = comparisonSeries(comparison, 'tension', { before: 'As it is', planned: 'Plan 1' });
    expect(series.map(({ name, points }) => [name, points.length])).toEqual([
      ['As it is', 88],
      ['Plan 1', 88],
    ]);
  });
});
