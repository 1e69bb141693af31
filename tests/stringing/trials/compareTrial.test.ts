import { describe, expect, it } from 'vitest';
import type { TrialKind } from '../../../src/piano/stringingRecords.ts';
import { compareTrial } from '../../../src/stringing/trials/compareTrial.ts';
import { concludeTrials } from '../../../src/stringing/trials/concludeTrials.ts';
import { type BeatReadingRecipe, beatReading } from '../beatReading.ts';
import { beatingString, takesOf } from './trialTakes.ts';

const HOLD: TrialKind = 'hold the bridge pin';
const beat = (depthDb: number, rateHz = 2, partialNumber = 1) => [{ partialNumber, rateHz, depthDb }];
const trial = (before: BeatReadingRecipe, after: BeatReadingRecipe, kind: TrialKind = HOLD) => ({
  kind,
  before: [beatReading(before)],
  after: [beatReading(after)],
});

describe('compareTrial', () => {
  it.each([
    ['stops', { beats: beat(8) }, {}],
    ['weaker', { beats: beat(20) }, { beats: beat(4) }],
    ['stronger', { beats: beat(4) }, { beats: beat(20) }],
    ['stronger', {}, { beats: beat(8) }],
    ['other rate', { beats: beat(8) }, { beats: beat(8, 3) }],
    ['mixed', { beats: beat(12) }, { beats: beat(12, 2, 2) }],
    ['no difference', { beats: beat(8) }, { beats: beat(7) }],
    ['no difference', {}, {}],
  ] as const)('says %s of %o and then %o', (outcome, before, after) => {
    expect(compareTrial(trial(before, after)).outcome).toBe(outcome);
  });

  it('does not count a beat that one take misses on one partial of many, and counts what two takes a side show', () => {
    const all = [1, 2, 3, 4].flatMap((number) => beat(8, 0.7 * number, number));
    const [before, after] = [{ beats: all }, { beats: all.slice(1) }];
    const once = compareTrial(trial(before, after));
    expect(once).toMatchObject({ outcome: 'no difference', finding: 'not this' });
    expect(once.partials.map(({ change }) => change)).toEqual(['stops', 'none', 'none', 'none']);
    expect(once.cautions).toContain('one-partial-alone');
    const twice = compareTrial({
      kind: HOLD,
      before: [beatReading(before), beatReading(before)],
      after: [beatReading(after), beatReading(after)],
    });
    expect(twice.outcome).toBe('weaker');
    expect(twice.cautions).not.toContain('one-partial-alone');
    expect(compareTrial(trial(before, { beats: all.slice(2) })).outcome).toBe('weaker');
  });

  it('takes a beat that hardly fits into the tone, and is not found again, for a guess of the fit', () => {
    // 0.27 Hz in the 4 s of the take: hardly more than one cycle; 1 Hz is found or gone beyond doubt.
    expect(compareTrial(trial({ beats: beat(8, 0.27) }, {})).outcome).toBe('no difference');
    expect(compareTrial(trial({ beats: beat(8, 1) }, {})).outcome).toBe('stops');
  });

  it('points to the bridge pin where holding it stops the beat, and away from it where nothing changes', () => {
    expect(compareTrial(trial({ beats: beat(8) }, {})).finding).toBe('bridge pin loose');
    expect(compareTrial(trial({ beats: beat(8) }, { beats: beat(8) })).finding).toBe('not this');
    expect(compareTrial(trial({}, {})).finding).toBeNull();
  });

  it('does not call a beat gone where the later take could not have shown it', () => {
    const faint = compareTrial(trial({ beats: beat(8) }, { snrDb: 12 }));
    expect(faint).toMatchObject({ outcome: 'cannot tell', reason: 'beat-not-assessable' });
    expect(compareTrial(trial({ beats: beat(8, 0.5) }, { durationS: 1 })).outcome).toBe('cannot tell');
  });

  it.each([
    ['no-usable-take', trial({ beats: beat(8) }, { faults: ['clipped'] })],
    ['different-strings', trial({ beats: beat(8) }, { midi: 85 })],
    ['not-one-string', trial({ stringPosition: 0 }, { stringPosition: 0 })],
  ] as const)('cannot tell: %s', (reason, takes) => {
    expect(compareTrial(takes)).toMatchObject({ outcome: 'cannot tell', reason, finding: null });
  });

  it('learns from repeated takes what strikes differ by', () => {
    const takes = (depthsDb: readonly number[]) => depthsDb.map((depthDb) => beatReading({ beats: beat(depthDb) }));
    const steady = compareTrial({ kind: HOLD, before: takes([10, 10.2, 9.9, 10.1]), after: takes([6, 6.1, 5.9, 6]) });
    const unsteady = compareTrial({ kind: HOLD, before: takes([10, 16, 5, 9]), after: takes([6, 3, 10, 5]) });
    expect([steady.outcome, unsteady.outcome]).toEqual(['weaker', 'no difference']);
  });

  it('warns of takes that are not alike', () => {
    const { cautions } = compareTrial(
      trial(
        { beats: beat(8) },
        { levelDbfs: -40, offsetCents: 5, faults: ['two-notes'] },
        'tap the wire to the bridge',
      ),
    );
    expect(cautions).toEqual(['levels-differ', 'pitch-moved', 'not-repeated', 'neighbour-may-sound', 'may-come-back']);
  });
});

describe('concludeTrials', () => {
  const KINDS: readonly TrialKind[] = [HOLD, 'press the wire at the bridge', 'take out its twist'];
  const trialsOf = (cured: readonly TrialKind[]) =>
    KINDS.map((kind) => trial({ beats: beat(8) }, cured.includes(kind) ? {} : { beats: beat(8) }, kind));

  it.each(KINDS)('names %s where it alone helps', (kind) => {
    expect(concludeTrials(trialsOf([kind]))).toMatchObject({ kind: 'one trial helps', named: { kind } });
  });

  it('tells several from none, and change from help', () => {
    expect(concludeTrials(trialsOf(KINDS.slice(0, 2))).kind).toBe('several trials help');
    expect(concludeTrials(trialsOf([]))).toMatchObject({ kind: 'no trial helps', named: null });
    expect(concludeTrials([trial({ beats: beat(4) }, { beats: beat(20) })]).kind).toBe('changed, not better');
    expect(concludeTrials([]).kind).toBe('cannot tell');
  });

  // The rates over many strings are the bench's (table trials).
  it('names the right trial from sound, and finds no difference where there is none', () => {
    const string = beatingString(16);
    const before = takesOf(string, true, 1, 160);
    const trials = KINDS.map((kind, index) => ({ kind, before, after: takesOf(string, index !== 1, 1, 161 + index) }));
    const conclusion = concludeTrials(trials);
    expect(conclusion.named?.kind).toBe(KINDS[1]);
    expect(conclusion.results.map(({ outcome }) => outcome)).toEqual(['no difference', 'stops', 'no difference']);
  }, 30_000);
});
