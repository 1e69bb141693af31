import { describe, expect, it } from 'vitest';
import type { ChangeInterval } from '../../../src/stability/drift/changeRows.ts';
import type { JudgedPin } from '../../../src/stability/drift/judgedPin.ts';
import { judgeBlock } from '../../../src/stability/drift/verdict.ts';

const INTERVALS: ChangeInterval[] = Array.from({ length: 20 }, (_, k) => ({
  fromDate: `${2005 + k}-01-01`,
  toDate: `${2005 + k}-07-01`,
  years: 0.5,
  humidityChangePct: 5,
  hasBaseline: true,
  missingCount: 0,
}));

function steadyPins(count: number): JudgedPin[] {
  return Array.from({ length: count }, (_, i) => ({
    midi: 21 + i,
    stringPosition: 2,
    slip: { centsPerYear: 0, standardUncertainty: 0.25, probability: 0.005 },
    isFlagged: false,
  }));
}

/** Neither flagged nor even suspected, but a fast slip of it cannot be ruled out. */
function doubtful(midi: number): JudgedPin {
  return {
    midi,
    stringPosition: 2,
    slip: { centsPerYear: -2.2, standardUncertainty: 0.4, probability: 0.4 },
    isFlagged: false,
  };
}

const judge = (pins: readonly JudgedPin[]) =>
  judgeBlock({ pins, zones: [], intervals: INTERVALS, thresholdCentsPerYear: 1, isHumidityKnown: true });

describe('a block of which hardly anything stays open', () => {
  it('holds without reserve where every string can be spoken for', () => {
    const { state, grounds, slipRuledOutAboveCentsPerYear } = judge(steadyPins(85));
    expect(state).toBe('holding');
    expect(slipRuledOutAboveCentsPerYear).toBeLessThan(1);
    expect(grounds.map(({ kind }) => kind)).not.toContain('pins-open');
  });

  it('holds where one string cannot be spoken for yet, and names it', () => {
    const verdict = judge([...steadyPins(84), doubtful(105)]);
    expect(verdict.state).toBe('holding');
    const open = verdict.grounds.find(({ kind }) => kind === 'pins-open');
    expect(open).toEqual({ kind: 'pins-open', pins: [{ midi: 105, stringPosition: 2, centsPerYear: -2.2 }] });
    // What is ruled out is ruled out of the others: the same as without that string.
    expect(verdict.slipRuledOutAboveCentsPerYear).toBe(judge(steadyPins(84)).slipRuledOutAboveCentsPerYear);
    expect(verdict.reasons.join(' ')).toContain('except A7 string 2 (-2.2 cents a year)');
  });

  it('names no more strings than it must', () => {
    const midis = Array.from({ length: 250 }, (_, i) => 21 + (i % 88));
    const many = midis.map((midi) => ({ ...steadyPins(1)[0]!, midi }));
    const open = judge([...many, doubtful(105)]).grounds.find(({ kind }) => kind === 'pins-open');
    expect(open).toMatchObject({ pins: [{ midi: 105 }] });
    expect(open?.kind === 'pins-open' && open.pins).toHaveLength(1);
  });

  it('does not hold where several strings cannot be spoken for', () => {
    const verdict = judge([...steadyPins(82), doubtful(103), doubtful(104), doubtful(105)]);
    expect(verdict.state).toBe('not enough evidence');
    expect(verdict.grounds[0]).toMatchObject({ kind: 'slip-could-hide' });
  });
});
