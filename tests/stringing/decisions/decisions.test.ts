import { describe, expect, it } from 'vitest';
import type { DecisionId, InstrumentId } from '../../../src/piano/ids.ts';
import type { StringDecision } from '../../../src/piano/stringingRecords.ts';
import { afterWork } from '../../../src/stringing/decisions/afterWork.ts';
import { type StringFacts, suggestDecision } from '../../../src/stringing/decisions/suggestDecision.ts';
import { workList } from '../../../src/stringing/decisions/workList.ts';
import { falseBeatOf } from '../../../src/stringing/falseBeats/falseBeatList.ts';
import { concludeTrials } from '../../../src/stringing/trials/concludeTrials.ts';
import { beatReading } from '../beatReading.ts';

const beats = [{ partialNumber: 1, rateHz: 2, depthDb: 10 }];
const loud = beatReading({ beats });
const quiet = beatReading();
const falseBeat = falseBeatOf(loud) ?? null;
const helped = (kind: 'hold the bridge pin' | 'take out its twist') =>
  concludeTrials([{ kind, before: [loud], after: [quiet] }]);
const inVain = concludeTrials([{ kind: 'hold the bridge pin', before: [loud], after: [loud] }]);

describe('suggestDecision', () => {
  it.each([
    ['leave', ['no-false-beat'], { falseBeat: null }],
    ['look again', ['not-recorded'], {}],
    ['look again', ['false-beat-without-trial'], { falseBeat }],
    ['bridge work', ['bridge-pin-loose'], { falseBeat, trials: helped('hold the bridge pin') }],
    ['replace wire', ['wire-curled'], { falseBeat, trials: helped('take out its twist') }],
    ['replace wire', ['no-trial-helps'], { falseBeat, trials: inVain }],
    ['replace pin', ['pin-fails', 'no-false-beat'], { falseBeat: null, pinFails: true }],
    ['replace wire', ['wire-over-stressed', 'no-false-beat'], { falseBeat: null, breakingShare: 0.75 }],
  ] as const)('suggests to %s: %s', (choice, reasons, facts: StringFacts) => {
    expect(suggestDecision(facts)).toEqual({ choice, reasons });
  });

  it('lets a beat be that is hardly heard', () => {
    const faint = falseBeatOf(beatReading({ beats: [{ partialNumber: 4, rateHz: 0.4, depthDb: 2 }] })) ?? null;
    expect(suggestDecision({ falseBeat: faint })).toEqual({ choice: 'leave', reasons: ['false-beat-hardly-heard'] });
  });
});

describe('workList', () => {
  const decision = (
    midi: number,
    choice: StringDecision['choice'],
    decidedOn: string,
    doneOn: string | null = null,
  ): StringDecision => ({
    id: `${midi} ${decidedOn}` as DecisionId,
    instrumentId: 'one' as InstrumentId,
    midi,
    stringPosition: 1,
    choice,
    reason: '',
    decidedOn,
    doneOn,
  });

  it('sorts by kind of work, then note, what is done apart, and takes the newest decision of a string', () => {
    const list = workList([
      decision(80, 'replace wire', '2024-01-01'),
      decision(60, 'replace wire', '2024-01-01'),
      decision(70, 'bridge work', '2024-01-01', '2024-02-01'),
      decision(71, 'bridge work', '2024-01-01', '2024-03-01'),
      decision(80, 'leave', '2023-01-01'),
      decision(50, 'look again', '2024-01-01'),
    ]);
    expect(
      list.map(({ choice, open, done }) => [choice, open.map(({ midi }) => midi), done.map(({ midi }) => midi)]),
    ).toEqual([
      ['look again', [50], []],
      ['bridge work', [], [71, 70]],
      ['replace wire', [60, 80], []],
    ]);
  });
});

describe('afterWork', () => {
  it.each([
    ['gone', loud, quiet],
    ['same', loud, loud],
    [
      'less',
      beatReading({ beats: [{ partialNumber: 1, rateHz: 2, depthDb: 25 }] }),
      beatReading({ beats: [{ partialNumber: 1, rateHz: 2, depthDb: 2 }] }),
    ],
    ['more', quiet, loud],
    ['same', quiet, quiet],
    ['cannot tell', loud, beatReading({ snrDb: 10 })],
    ['cannot tell', loud, beatReading({ faults: ['clipped'] })],
    ['not recorded', loud, undefined],
  ] as const)('says %s', (outcome, before, after) => {
    expect(afterWork(before, after).outcome).toBe(outcome);
  });

  it('refuses another string', () => {
    expect(() => afterWork(loud, beatReading({ midi: 85 }))).toThrow(/same string, got 84\/2 and 85\/2/);
  });
});
