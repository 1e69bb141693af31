import { describe, expect, it } from 'vitest';
import type { NoteReading } from '../../../src/piano/reading.ts';
import {
  inharmonicityCurve,
  inharmonicityRows,
  inharmonicitySeries,
  notMeasuredSentence,
  spreadSentence,
  standingOutSentence,
} from '../../../src/screens/survey/inharmonicityChart.ts';
import { lifeCurve, lifeRows, lifeSeries, weakSentence } from '../../../src/screens/survey/lifeChart.ts';
import { namesOf } from '../../../src/screens/survey/stringNames.ts';
import { surveyCurves } from '../../../src/survey/surveyCurves.ts';
import { typicalB, typicalDecayTimeS } from '../../support/typicalPiano.ts';
import { plainReading } from '../../survey/plainReading.ts';

const COMPASS = { lowestMidi: 36, highestMidi: 84 };
const STIFF = 60;
const DEAD = 66;
const UNMEASURED = 80;

/** C4 half again as stiff as its neighbours, F♯4 dying soon, and G♯5 with too few partials. */
const READINGS: NoteReading[] = Array.from({ length: 49 }, (_, index) => {
  const midi = 36 + index;
  const inharmonicityB = typicalB(midi) * (midi === STIFF ? 1.5 : 1);
  return {
    ...plainReading({ midi, stringPosition: 1 }),
    inharmonicityB: midi === UNMEASURED ? null : inharmonicityB,
    inharmonicityBStandardUncertainty: midi === UNMEASURED ? null : 0.02 * inharmonicityB,
    lifeTimeS: typicalDecayTimeS(midi) * (midi === DEAD ? 0.3 : 1),
  };
});
const plain = (text: string) => text.replace(/[\u2009\u00a0]/g, ' ');
const HEARD = READINGS.map(({ midi }) => midi);
const found = surveyCurves(READINGS, COMPASS, 45);
const inharmonicity = found.inharmonicity!;
const life = found.life!;

describe('the chart of inharmonicity', () => {
  it('draws what stands out as a sign of its own, under its name, and the rest as discs', () => {
    const [ordinary, called] = inharmonicitySeries(inharmonicity);
    expect(ordinary).toMatchObject({ shape: 'disc' });
    expect(ordinary?.points).toHaveLength(47);
    expect(ordinary?.points.some(({ tag }) => tag !== undefined)).toBe(false);
    expect(called).toMatchObject({ shape: 'triangle', points: [{ tag: { text: 'C4', stands: 'above' } }] });
    expect(called?.points[0]?.detail).toMatch(/^C4: .*× 10⁻⁴, 1\.50 times the curve$/);
  });

  it('has bars of two standard uncertainties, as far up as down in ratio', () => {
    const { y, low, high } = inharmonicitySeries(inharmonicity)[0]!.points[0]!;
    expect(high / y).toBeCloseTo(Math.exp(0.04), 12);
    expect(y / low).toBeCloseTo(high / y, 12);
  });

  it('has a band that holds single notes, in two stretches where the bass bridge ends', () => {
    const { stretches } = inharmonicityCurve(inharmonicity);
    expect(stretches.map((notes) => [notes[0]?.x, notes.at(-1)?.x])).toEqual([
      [36, 45],
      [46, 84],
    ]);
    const at = inharmonicity.curve.find(({ midi }) => midi === 70)!;
    const drawn = stretches[1]!.find(({ x }) => x === 70)!;
    expect(Math.log(drawn.high / drawn.y)).toBeCloseTo((2 * at.noteStandardUncertainty) / at.inharmonicityB, 12);
    expect(inharmonicityCurve({ ...inharmonicity, breakAfterMidi: null }).stretches).toHaveLength(1);
  });

  it('names in words what stands out, and says so when nothing does', () => {
    expect(standingOutSentence(inharmonicity)).toMatch(/^Stands out: C4 \(1\.50 times the curve\)\.$/);
    const quiet = { ...inharmonicity, notes: inharmonicity.notes.map((note) => ({ ...note, standsOut: false })) };
    expect(standingOutSentence(quiet)).toBe('No note stands out from the curve.');
  });

  it('marks what comes from the curve as not measured, in the sentence and in the table', () => {
    expect(notMeasuredSentence(inharmonicity, HEARD)).toMatch(/G♯5/);
    expect(
      notMeasuredSentence(
        inharmonicity,
        HEARD.filter((midi) => midi !== UNMEASURED),
      ),
    ).toBeNull();
    const rows = inharmonicityRows(inharmonicity, HEARD);
    expect(rows).toHaveLength(49);
    expect([rows[0]?.name, rows[1]?.name, rows[48]?.name]).toEqual(['C2', 'C♯2', 'C6']);
    const row = rows[UNMEASURED - 36];
    expect(row).toMatchObject({ name: 'G♯5', measured: 'not measured, from the curve', ratio: '' });
    expect(row?.curve).toMatch(/±.*× 10⁻³/);
    expect(rows[STIFF - 36]?.ratio).toMatch(/^1\.50, stands out$/);
  });

  it('says how far notes scatter, and where the wound strings are taken to end', () => {
    const spread = { ...inharmonicity, woundSpread: 0.09, plainSpread: 0.031 };
    expect(plain(spreadSentence(spread))).toBe('Notes scatter about the curve by 9 % up to A2 and by 3 % above it.');
    const unknown = surveyCurves(READINGS, COMPASS, null).inharmonicity!;
    expect(spreadSentence(unknown)).toMatch(/up to E2 /);
  });

  it('does not speak for notes that nobody played', () => {
    expect(notMeasuredSentence(inharmonicity, [36, 37, 100])).toBeNull();
  });
});

it('names the string only where the survey holds more than one of a note', () => {
  const left = { midi: 61, stringPosition: 1 as const };
  expect(namesOf([left])(left)).toBe('C♯4');
  expect(namesOf([left, { midi: 62, stringPosition: 3 }])(left)).toBe('C♯4 left string');
});

describe('the chart of how long notes live', () => {
  it('draws weak notes as a sign of their own, and names them in words', () => {
    expect(lifeSeries(life)[1]).toMatchObject({
      shape: 'triangle',
      name: 'weak',
      points: [{ tag: { text: 'F♯4', stands: 'below' } }],
    });
    expect(weakSentence(life)).toMatch(/F♯4 \(0\.3\d? times the curve\)/);
    const sound = { ...life, notes: life.notes.map((note) => ({ ...note, isWeak: false })) };
    expect(weakSentence(sound)).toBe('No note lives less than half as long as the notes around it.');
    expect(lifeSeries(sound)).toHaveLength(1);
  });

  it('has a band as wide as the curve’s uncertainty and the notes’ spread together', () => {
    const at = life.curve.find(({ midi }) => midi === 60)!;
    const { y, low, high } = lifeCurve(life).stretches[0]!.find(({ x }) => x === 60)!;
    expect(Math.log(high / y)).toBeCloseTo(2 * Math.hypot(at.logStandardUncertainty, life.spread), 12);
    expect(Math.log(y / low)).toBeCloseTo(Math.log(high / y), 12);
  });

  it('has a row for each string', () => {
    expect(lifeRows(life)).toHaveLength(49);
    expect(lifeRows(life)[DEAD - 36]?.ratio).toMatch(/, weak$/);
  });
});
