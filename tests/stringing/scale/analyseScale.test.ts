import { describe, expect, it } from 'vitest';
import { analyseScale } from '../../../src/stringing/scale/analyseScale.ts';
import { compareScales } from '../../../src/stringing/scale/compareScales.ts';
import { plainRow, plainRows, woundRow } from '../schedule/rows.ts';

const AT_440 = { pitchStandardHz: 440 };
const rows = plainRows(50, 80);

describe('analyseScale', () => {
  it('gives a note’s figures together: C6 of 181 mm and 0.925 mm is at 51 % of A228', () => {
    const [note] = analyseScale([plainRow(84, { speakingLengthMm: 181, wireDiameterMm: 0.925 })], AT_440).notes;
    expect(note).toMatchObject({ tensionN: expect.closeTo(757.08, 1), stressMpa: expect.closeTo(1126.6, 1) });
    expect(note?.noteTensionN).toBeCloseTo(3 * (note?.tensionN ?? 0), 9);
    expect(note?.breakingShare).toBeCloseTo(0.51, 3);
    expect(note?.strength).toMatchObject({ known: true, gradeName: 'ASTM A228' });
  });

  it('goes with the square of the pitch standard', () => {
    const [low, high] = [415, 440].map(
      (pitchStandardHz) => analyseScale(rows, { pitchStandardHz }).total?.tensionN ?? 0,
    );
    expect((high ?? 0) / (low ?? 1)).toBeCloseTo((440 / 415) ** 2, 10);
  });

  it('knows nothing of what was not measured, and counts it', () => {
    const gap = rows.map((row) => (row.midi === 60 ? { ...row, speakingLengthMm: null } : row));
    const scale = analyseScale(gap, AT_440);
    expect(scale.notes.find(({ midi }) => midi === 60)).toMatchObject({
      tensionN: null,
      breakingShare: null,
      predictedB: null,
      missing: ['speakingLengthMm'],
    });
    expect(scale.total).toMatchObject({ unknownNoteCount: 1, stringCount: 3 * 30 });
    expect(scale.cautions).toContainEqual({ kind: 'figures-missing', midi: 60, fields: ['speakingLengthMm'] });
  });

  it('gives no figure for a core that is not thinner than its string, and does not fail', () => {
    const [note] = analyseScale([woundRow(40, { speakingLengthMm: 1000, coreDiameterMm: 2 })], AT_440).notes;
    expect(note).toMatchObject({ tensionN: null, stressMpa: null, predictedB: null });
  });

  it('does not guess a grade', () => {
    const [note] = analyseScale(
      [plainRow(69, { speakingLengthMm: 400, wireDiameterMm: 1, wireGrade: 'soft' })],
      AT_440,
    ).notes;
    expect(note).toMatchObject({ breakingShare: null, strength: { known: false, reason: 'wire-grade-unknown' } });
    expect(note?.tensionN).toBeGreaterThan(700);
  });

  it.each([
    [58.7, 'stress-very-high'],
    [54.5, 'stress-very-high'],
    [53, 'stress-high'],
    [45, undefined],
    [33, 'stress-low'],
  ])('says of C8 at %f mm: %s', (speakingLengthMm, kind) => {
    const { cautions } = analyseScale([plainRow(108, { speakingLengthMm, wireDiameterMm: 0.8 })], AT_440);
    expect(cautions[0]?.kind).toBe(kind);
  });
});

describe('tension steps', () => {
  const outstanding = (changed: typeof rows) =>
    analyseScale(changed, AT_440)
      .steps.filter(({ standsOut }) => standsOut)
      .map(({ fromMidi }) => fromMidi);

  it('stay quiet in a smooth scale and where the wire changes by half a gauge', () => {
    expect(outstanding(rows)).toEqual([]);
    expect(outstanding(rows.map((row) => ({ ...row, wireDiameterMm: row.midi < 65 ? 1.025 : 1 })))).toEqual([]);
  });

  it('stand out on both sides of a wire one gauge off, and say that it is the wire', () => {
    const wrong = rows.map((row) => (row.midi === 65 ? { ...row, wireDiameterMm: 1.05 } : row));
    expect(outstanding(wrong)).toEqual([64, 65]);
    const step = analyseScale(wrong, AT_440).steps.find(({ fromMidi }) => fromMidi === 64);
    expect(step?.ofMass).toBeCloseTo(1.05 ** 2 - 1, 9);
  });

  it('are allowed more at the break', () => {
    const woundEnd = woundRow(49, { speakingLengthMm: 700, coreDiameterMm: 1, wireDiameterMm: 1.6 });
    const { steps } = analyseScale([woundEnd, ...rows], AT_440);
    expect(steps[0]).toMatchObject({ fromMidi: 49, isAtBreak: true });
  });
});

describe('compareScales', () => {
  it('tells what the total grows by, and where', () => {
    const before = analyseScale(rows, { pitchStandardHz: 435 });
    const planned = analyseScale(
      rows.map((row) => (row.midi > 70 ? { ...row, wireDiameterMm: 1.05 } : row)),
      AT_440,
    );
    const comparison = compareScales(before, planned);
    const pitchGrowth = (440 / 435) ** 2;
    expect(comparison.notes[0]?.tensionGrowth).toBeCloseTo(pitchGrowth - 1, 10);
    expect(comparison.notes.at(-1)?.tensionGrowth).toBeCloseTo(pitchGrowth * 1.05 ** 2 - 1, 10);
    expect(comparison.notes.at(-1)?.stressGrowth).toBeCloseTo(pitchGrowth - 1, 10);
    const { beforeN = 0, plannedN = 0, growth = 0 } = comparison.total ?? {};
    expect(growth).toBeCloseTo((planned.total?.tensionN ?? 0) / (before.total?.tensionN ?? 1) - 1, 10);
    expect(comparison.cautions[0]).toMatchObject({ kind: 'pitch-rises', cents: expect.closeTo(19.786, 3) });
    expect(comparison.cautions).toContainEqual({ kind: 'total-grows', growth, addedN: plannedN - beforeN });
  });

  it('compares only what is known on both sides, and says how many notes that leaves out', () => {
    const short = rows.filter(({ midi }) => midi < 78);
    const comparison = compareScales(analyseScale(short, AT_440), analyseScale(rows, AT_440));
    expect(comparison.total).toMatchObject({ growth: 0, comparedNoteCount: 28, leftOutNoteCount: 3 });
    expect(comparison.cautions).toEqual([{ kind: 'notes-left-out', noteCount: 3 }]);
  });
});
