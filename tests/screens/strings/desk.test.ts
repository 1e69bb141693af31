import { describe, expect, it } from 'vitest';
import type { DecisionId, InstrumentId } from '../../../src/piano/ids.ts';
import { decisionStep, joined } from '../../../src/screens/strings/decisionSteps.ts';
import { deskActionOf } from '../../../src/screens/strings/deskKeys.ts';
import { decisionByString, deskRows, filteredRows, reasonText } from '../../../src/screens/strings/deskRows.ts';
import { afterDeciding, marked, moved, targetsOf, UNTOUCHED_DESK } from '../../../src/screens/strings/deskState.ts';
import { beatingReading } from './beatingReading.ts';
import { decisionOf, takesOn } from './stringRecordsOf.ts';

const bare = { ctrlKey: false, metaKey: false, altKey: false, shiftKey: false };
const KEYS = ['a', 'b', 'c', 'd'];

describe('keys', () => {
  it('1 to 5 decide in the order of the buttons', () => {
    expect(deskActionOf({ ...bare, key: '2' })).toEqual({ kind: 'decide', choice: 'bridge work' });
    expect(deskActionOf({ ...bare, key: '5' })).toEqual({ kind: 'decide', choice: 'look again' });
    expect(deskActionOf({ ...bare, key: '6' })).toBeUndefined();
  });

  it('with a modifier are left to the browser, but for Ctrl Z', () => {
    expect(deskActionOf({ ...bare, key: '1', ctrlKey: true })).toBeUndefined();
    expect(deskActionOf({ ...bare, key: '1', altKey: true })).toBeUndefined();
    expect(deskActionOf({ ...bare, key: 'z', ctrlKey: true })).toEqual({ kind: 'undo' });
    expect(deskActionOf({ ...bare, key: 'z' })).toBeUndefined();
  });
});

describe('the row in hand', () => {
  it('stays within the rows, and is the first where the former one is not shown', () => {
    expect(moved(KEYS, UNTOUCHED_DESK, -1).current).toBe('a');
    expect(moved(KEYS, { current: 'd', marked: new Set() }, 5).current).toBe('d');
    expect(targetsOf(KEYS, { current: 'gone', marked: new Set() })).toEqual(['a']);
  });

  it('goes on after a decision, but not after one for all that are marked', () => {
    expect(afterDeciding(KEYS, { current: 'b', marked: new Set() }).current).toBe('c');
    expect(afterDeciding(KEYS, { current: 'b', marked: new Set(['a', 'b']) })).toEqual({
      current: 'b',
      marked: new Set(),
    });
  });

  it('is decided alone, or with the marked ones in sight', () => {
    const state = marked(moved(KEYS, UNTOUCHED_DESK, 1, true), 'd');
    expect(targetsOf(KEYS, state)).toEqual(['a', 'b', 'd']);
    expect(targetsOf(['c', 'd'], state)).toEqual(['d']);
  });
});

describe('the rows', () => {
  const takes = takesOn('2024-03-01', [
    beatingReading(60, { rateHz: 1.5, depthDb: 3 }),
    beatingReading(62),
    beatingReading(64, { rateHz: 1.5, depthDb: 12 }),
  ]);
  const bench = { decisions: [decisionOf({ midi: 62 }), decisionOf({ id: 'e' as DecisionId, midi: 70 })], trials: [] };
  const rows = deskRows(takes, takes, bench);

  it('have the most audible beat first among those that beat', () => {
    expect(filteredRows(rows, 'beating').map(({ place }) => place.midi)).toEqual([64, 60]);
  });

  it('hold decided strings that were not recorded too, and leave them out of what is not decided', () => {
    expect(rows.map(({ place, audibility }) => [place.midi, audibility])).toContainEqual([70, 'missing']);
    expect(filteredRows(rows, 'open').map(({ place }) => place.midi)).toEqual([60, 64]);
  });

  it('suggest to look again at a plain beat on which nothing was tried', () => {
    expect(rows.find(({ place }) => place.midi === 64)?.suggestion).toEqual({
      choice: 'look again',
      reasons: ['false-beat-without-trial'],
    });
  });
});

describe('a decision', () => {
  const deciding = { instrumentId: 'i' as InstrumentId, today: '2024-03-02', newId: () => 'new' as DecisionId };
  const suggestion = { choice: 'bridge work', reasons: ['bridge-pin-loose'] } as const;
  const place = { midi: 60, stringPosition: 2 } as const;

  it('bears the reason of the suggestion it follows, and none where it goes another way', () => {
    const follow = decisionStep({ place, decision: null, suggestion }, 'bridge work', deciding);
    expect(follow.written[0]?.reason).toBe(reasonText(suggestion));
    expect(decisionStep({ place, decision: null, suggestion }, 'leave', deciding).written[0]?.reason).toBe('');
    expect(follow.undoing).toEqual({ restored: [], added: ['new'] });
  });

  it('changes today’s own, and leaves an older or a carried out one as history', () => {
    const today = decisionOf({ decidedOn: '2024-03-02' });
    const changed = decisionStep({ place, decision: today, suggestion }, 'leave', deciding);
    expect(changed.written[0]?.id).toBe(today.id);
    expect(changed.undoing).toEqual({ restored: [today], added: [] });
    for (const decision of [decisionOf(), { ...today, doneOn: '2024-03-02' }])
      expect(decisionStep({ place, decision, suggestion }, 'leave', deciding).written[0]?.id).toBe('new');
  });

  it('for several strings is one step, taken back as one', () => {
    const step = decisionStep({ place, decision: null, suggestion }, 'leave', deciding);
    expect(joined([step, step])).toMatchObject({ written: { length: 2 }, undoing: { added: ['new', 'new'] } });
  });

  it('that counts is the open one where another of the same day was carried out', () => {
    const done = decisionOf({ id: 'done' as DecisionId, doneOn: '2024-03-01' });
    const open = decisionOf({ id: 'open' as DecisionId });
    for (const both of [
      [done, open],
      [open, done],
    ])
      expect(decisionByString(both).get('60/2')?.id).toBe('open');
  });
});
