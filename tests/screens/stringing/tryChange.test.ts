import { describe, expect, it } from 'vitest';
import { steppedSize, triedSchedule } from '../../../src/screens/stringing/tryChange.ts';
import { readTry, type TryOutDraft } from '../../../src/screens/stringing/tryOutDraft.ts';
import { analyseScale } from '../../../src/stringing/scale/analyseScale.ts';
import { compareScales } from '../../../src/stringing/scale/compareScales.ts';
import { schedule88 } from './schedule88.ts';

const strung = { rows: schedule88(), pitchStandardHz: 440 };
const treble = { fromMidi: 72, toMidi: 108 };
const compass = { lowestMidi: 21, highestMidi: 108 };

function growthOf(change: Parameters<typeof triedSchedule>[1]) {
  const tried = triedSchedule(strung, change);
  const figures = (one: typeof tried) => analyseScale(one.rows, { pitchStandardHz: one.pitchStandardHz });
  return compareScales(figures(strung), figures(tried));
}

describe('one change of some notes', () => {
  it('of the pitch changes all pulls with its square', () => {
    // (435/440)² − 1
    expect(growthOf({ ...treble, kind: 'pitch', pitchStandardHz: 435 }).total?.growth).toBeCloseTo(-0.0226, 4);
  });

  it('of the lengths changes pull and stress of these notes with the square, and of no other', () => {
    const { notes } = growthOf({ ...treble, kind: 'length', share: 0.02 });
    const grown = notes.filter(({ stressGrowth }) => Math.abs(stressGrowth ?? 0) > 1e-9).map(({ midi }) => midi);
    expect(grown).toEqual(notes.map(({ midi }) => midi).filter((midi) => midi >= 72));
    // Lengths are kept to a tenth of a millimetre: 0.05 in 50 mm is 0.2 % of stress.
    for (const { midi, stressGrowth } of notes) if (midi >= 72) expect(stressGrowth).toBeCloseTo(0.0404, 2);
  });

  it('of the wire leaves the stress of plain strings as it was', () => {
    const { notes } = growthOf({ ...treble, kind: 'size', sizes: 1 });
    const top = notes.find(({ midi }) => midi === 108);
    expect(top?.stressGrowth).toBeCloseTo(0, 12);
    // C8 has 0.775 mm, metric 13; metric 14 is 0.825 mm.
    expect(top?.tensionGrowth).toBeCloseTo((0.825 / 0.775) ** 2 - 1, 10);
  });

  it('of a wound string’s core keeps the thickness of its wrap', () => {
    const before = strung.rows.find(({ midi }) => midi === 40);
    const after = triedSchedule(strung, { fromMidi: 40, toMidi: 40, kind: 'size', sizes: -1 }).rows.find(
      ({ midi }) => midi === 40,
    );
    const wrap = (row: typeof before) => (row?.wireDiameterMm ?? 0) - (row?.coreDiameterMm ?? 0);
    expect(after?.coreDiameterMm).toBeLessThan(before?.coreDiameterMm ?? 0);
    expect(wrap(after)).toBeCloseTo(wrap(before), 3);
  });

  it('keeps to the series of the wire, and ends where the series ends', () => {
    expect(steppedSize(0.8, 0.5)).toBe(0.825);
    expect(steppedSize(0.9906, 1)).toBe(1.0414);
    expect(steppedSize(0.725, -1)).toBeUndefined();
  });
});

describe('the form', () => {
  const draft: TryOutDraft = { from: 'C5', to: 'c8', kind: 'size', amount: '1' };
  const read = (change: Partial<TryOutDraft>) => readTry({ ...draft, ...change }, compass, 'A0-C8');

  it('is read with commas, minus signs and small letters', () => {
    expect(read({ amount: '−0,5' })).toEqual({ isSound: true, change: { ...treble, kind: 'size', sizes: -0.5 } });
    expect(read({ kind: 'length', amount: '2 %' })).toMatchObject({ change: { share: 0.02 } });
    expect(read({ kind: 'pitch', amount: '435', from: '' })).toMatchObject({ change: { pitchStandardHz: 435 } });
  });

  it.each([
    [{ from: 'H5' }, 'from'],
    [{ to: 'C9' }, 'to'],
    [{ from: 'C8', to: 'C5' }, 'to'],
    [{ amount: '0.3' }, 'amount'],
    [{ amount: 'thicker' }, 'amount'],
    [{ kind: 'diameter' as const, amount: '17' }, 'amount'],
    [{ kind: 'pitch' as const, amount: '880' }, 'amount'],
  ])('says where %j is wrong', (change, field) => {
    const outcome = read(change);
    expect(outcome.isSound ? null : outcome.fault?.field).toBe(field);
  });

  it('is silent while nothing is typed', () => {
    expect(read({ amount: ' ' })).toEqual({ isSound: false, fault: null });
  });
});
