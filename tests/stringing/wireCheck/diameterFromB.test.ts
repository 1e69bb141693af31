import { describe, expect, it } from 'vitest';
import { type DiameterCheck, diametersFromB } from '../../../src/stringing/wireCheck/diameterFromB.ts';
import { type CheckPlan, RIGHT_ROWS, simulateCheck } from './simulatedCheck.ts';

const AT_440 = { pitchStandardHz: 440 };
const PLAN: CheckPlan = { seed: 1, wrongIn: 'schedule', wrongCount: 3, numbersOff: 1, errorShare: 0.02 };
const SEEDS = Array.from({ length: 20 }, (_, index) => index + 1);

const accused = (check: DiameterCheck) =>
  check.known ? check.strings.filter(({ verdict }) => verdict === 'does-not-fit' || verdict === 'nothing-fits') : [];

function outcomes(plan: Omit<CheckPlan, 'seed'>) {
  const runs = SEEDS.map((seed) => simulateCheck({ ...plan, seed }));
  const judged = runs.map(({ stated, measured, wrong }) => {
    const named = accused(diametersFromB(stated, measured, AT_440));
    const right = named.filter(({ midi }) => wrong.has(midi));
    const sized = right.filter(
      ({ midi, fittingGauge }) => Math.abs((fittingGauge?.diameterMm ?? 0) - (wrong.get(midi) ?? 9)) < 0.004,
    );
    return { found: right.length, falselyNamed: named.length - right.length, sized: sized.length };
  });
  const sum = (figure: 'found' | 'falselyNamed' | 'sized') => judged.reduce((total, run) => total + run[figure], 0);
  return { found: sum('found'), falselyNamed: sum('falselyNamed'), sized: sum('sized') };
}

describe('diametersFromB', () => {
  // The rates over many invented scales are the bench's (table wires).
  it('finds three slips of one gauge in a schedule, with B known to 2 % and all strings off by 8 % alike', () => {
    const { found, falselyNamed, sized } = outcomes(PLAN);
    expect(found).toBeGreaterThanOrEqual(57);
    expect(falselyNamed).toBeLessThanOrEqual(2);
    expect(sized / found).toBeGreaterThan(0.8);
  });

  it('finds most wrong wires beside a schedule that looks right, and hardly names a right one', () => {
    const { found, falselyNamed } = outcomes({ ...PLAN, wrongIn: 'piano' });
    expect(found).toBeGreaterThanOrEqual(49);
    expect(falselyNamed).toBeLessThanOrEqual(2);
  });

  it('finds all of them, in either case, where B is known to 1 %', () => {
    for (const wrongIn of ['schedule', 'piano'] as const) {
      const { found, falselyNamed } = outcomes({ ...PLAN, wrongIn, errorShare: 0.01 });
      expect(found).toBeGreaterThanOrEqual(59);
      expect(falselyNamed).toBeLessThanOrEqual(2);
    }
  });

  it('accuses nobody where all strings are off alike by a third', () => {
    const { stated, measured } = simulateCheck({ ...PLAN, wrongCount: 0 });
    const shifted = measured.map((string) => ({ ...string, inharmonicityB: 1.3 * string.inharmonicityB }));
    const check = diametersFromB(stated, shifted, AT_440);
    expect(accused(check)).toEqual([]);
    const ratio = check.known ? (check.sections.at(-1)?.ratio ?? 0) : 0;
    expect(ratio).toBeGreaterThan(1.1);
  });

  it('names the two strings of a note that one length of wrong wire made, and not the third', () => {
    const { stated, measured } = simulateCheck({ ...PLAN, wrongCount: 0 });
    const three = measured.flatMap((string) =>
      ([1, 2, 3] as const).map((stringPosition) => {
        const isWrong = string.midi === 70 && stringPosition < 3;
        return { ...string, stringPosition, inharmonicityB: string.inharmonicityB * (isWrong ? 1.12 : 1) };
      }),
    );
    const named = accused(diametersFromB(stated, three, AT_440));
    expect(named.map(({ midi, stringPosition }) => [midi, stringPosition])).toEqual([
      [70, 1],
      [70, 2],
    ]);
  });

  it('doubts a string more on a piano on which other wires are wrong', () => {
    const { stated, measured } = simulateCheck({ ...PLAN, wrongCount: 0 });
    const doubtOf = (wrongMidis: readonly number[]) => {
      const heard = measured.map((string) => {
        const factor = string.midi === 60 ? 1.08 : wrongMidis.includes(string.midi) ? 1.13 : 1;
        return { ...string, inharmonicityB: string.inharmonicityB * factor };
      });
      const check = diametersFromB(stated, heard, AT_440);
      return check.known ? (check.strings.find(({ midi }) => midi === 60)?.probability ?? 0) : 0;
    };
    const [alone, amongOthers] = [doubtOf([]), doubtOf([72, 80, 88, 96])];
    expect(alone).toBeGreaterThan(0.02);
    expect(amongOthers).toBeGreaterThan(1.5 * alone);
  });

  it('says the length that would do the same, and how sure the diameter is', () => {
    const { stated, measured, wrong } = simulateCheck({ ...PLAN, errorShare: 0.005 });
    const check = diametersFromB(stated, measured, AT_440);
    expect(accused(check).length).toBeGreaterThan(0);
    for (const string of accused(check)) {
      const lengthMm = stated.find(({ midi }) => midi === string.midi)?.speakingLengthMm ?? 0;
      expect((lengthMm / string.fittingLengthMm) ** 4).toBeCloseTo(string.ratioToOthers, 9);
      const offMm = string.fittingDiameterMm - (wrong.get(string.midi) ?? 0);
      expect(Math.abs(offMm)).toBeLessThan(4 * string.fittingDiameterStandardUncertaintyMm);
    }
    expect(accused(check)).toHaveLength(3);
  });

  it('says that no size fits where B is far off', () => {
    const { stated, measured } = simulateCheck({ ...PLAN, wrongCount: 0 });
    const odd = measured.map((string) =>
      string.midi === 80 ? { ...string, inharmonicityB: 2 * string.inharmonicityB } : string,
    );
    expect(accused(diametersFromB(stated, odd, AT_440))).toMatchObject([{ midi: 80, verdict: 'nothing-fits' }]);
  });

  it('leaves wound strings and notes without figures out, and says so', () => {
    const { stated, measured } = simulateCheck(PLAN);
    const wound = {
      midi: 30,
      stringPosition: 1,
      inharmonicityB: 1e-4,
      inharmonicityBStandardUncertainty: 1e-6,
    } as const;
    const rows = stated.map((row) => (row.midi === 90 ? { ...row, speakingLengthMm: null } : row));
    expect(diametersFromB(rows, [wound, ...measured], AT_440)).toMatchObject({ known: true, leftOutMidi: [30, 90] });
  });

  it('needs ten plain notes', () => {
    const { measured } = simulateCheck(PLAN);
    expect(diametersFromB(RIGHT_ROWS, measured.slice(0, 9), AT_440)).toEqual({
      known: false,
      reason: 'not-enough-evidence',
    });
  });

  it('refuses an uncertainty of zero', () => {
    const { measured } = simulateCheck(PLAN);
    const bad = measured.map((string) => ({ ...string, inharmonicityBStandardUncertainty: 0 }));
    expect(() => diametersFromB(RIGHT_ROWS, bad, AT_440)).toThrow(/must be above zero/);
  });
});
