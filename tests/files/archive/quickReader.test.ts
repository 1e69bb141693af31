import { describe, expect, it } from 'vitest';
import { quickReader } from '../../../src/files/archive/quickReader.ts';
import { beats, components, partials } from '../../../src/files/archive/readingTables.ts';
import { createRowDecoder } from '../../../src/files/archive/rowDecoder.ts';
import { headerOf } from '../../../src/files/archive/rowEncoder.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const quickTables = [partials, beats, components].map((spec) => ({ name: spec.name, spec }));

describe.each(quickTables)('the quick way to a row of $name', ({ spec }) => {
  const header = headerOf(spec);
  const quick = quickReader(spec, header);
  const { uniform } = seededRandom(20_260_402);
  const isOrNull = spec.columns.map(({ empty }) => empty === 'null');
  const cellsOf = (isNull: boolean) => [
    ...spec.columns.map(({ type }, index) => {
      if (isNull && isOrNull[index]) return '';
      if (type === 'text') return `id-${Math.floor(9 * uniform())}`;
      return type === 'integer' ? String(1 + Math.floor(9 * uniform())) : String(100 * uniform() - 50);
    }),
    '',
  ];
  /** The columns in another order, which is read the slow way. */
  const slowly = (cells: readonly string[]) => {
    const outcome = createRowDecoder(spec, [...header].reverse());
    if (!outcome.ok) throw new Error(outcome.message);
    const faults: string[] = [];
    const row = outcome.decoder.row([...cells].reverse(), (column, message) => faults.push(`${column} ${message}`));
    return { row, faults };
  };

  it('gives the row that the slow way gives', () => {
    for (let time = 0; time < 20; time++) {
      const cells = cellsOf(time % 2 === 0);
      const { row, faults } = slowly(cells);
      expect(faults).toEqual([]);
      expect(quick?.(cells)).toEqual(row);
    }
  });

  it('is left where anything is out of the ordinary', () => {
    const cells = cellsOf(false);
    const withCell = (index: number, cell: string) => quick?.(cells.map((one, at) => (at === index ? cell : one)));
    expect(withCell(-1, '')).toBeDefined();
    expect(withCell(header.length - 1, '{"a":1}')).toBeUndefined();
    for (const [index, { type }] of spec.columns.entries()) {
      if (type !== 'text') expect(withCell(index, 'x')).toBeUndefined();
      if (!isOrNull[index]) expect(withCell(index, '')).toBeUndefined();
    }
    expect(quickReader(spec, [...header].reverse())).toBeUndefined();
  });
});
