import { describe, expect, it } from 'vitest';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import type { RecordSet } from '../../../src/records/recordSet.ts';
import { checkRow } from '../../../src/records/rowSchemas.ts';
import { afterWork } from '../../../src/stringing/decisions/afterWork.ts';
import { concludeTrials } from '../../../src/stringing/trials/concludeTrials.ts';

const [, , garden] = demonstrationRecords(1908) as [RecordSet, RecordSet, RecordSet];
const { surveys, takes, trials = [], decisions = [] } = garden;

const readings = (ids: readonly string[]) => takes.filter(({ id }) => ids.includes(id)).map(({ reading }) => reading);
const conclude = (midi: number) =>
  concludeTrials(
    trials
      .filter((trial) => trial.midi === midi)
      .map(({ kind, takesBefore, takesAfter }) => ({
        kind,
        before: readings(takesBefore),
        after: readings(takesAfter),
      })),
  );

describe('the invented morning at the bridge', () => {
  it('consists of sound rows whose takes are in its own survey', () => {
    for (const row of trials) expect(checkRow('trials', row).isSound).toBe(true);
    for (const row of decisions) expect(checkRow('decisions', row).isSound).toBe(true);
    for (const trial of trials)
      for (const id of [...trial.takesBefore, ...trial.takesAfter])
        expect(takes.find((take) => take.id === id)).toMatchObject({ surveyId: trial.surveyId, midi: trial.midi });
  });

  it('names the loose pin, the wire that is not down, and the string on which nothing helps', () => {
    expect(conclude(72).named).toMatchObject({ kind: 'hold the bridge pin', outcome: 'stops' });
    expect(conclude(74).named).toMatchObject({ kind: 'tap the wire to the bridge', outcome: 'weaker' });
    expect(conclude(76).kind).toBe('no trial helps');
  });

  it('counts only what was recorded before anything was done among the readings of its visit', () => {
    const bench = surveys.filter(({ strings }) => strings === 'single strings');
    const kept = takes.filter(({ surveyId, isKept }) => isKept && bench.some(({ id }) => id === surveyId));
    expect(kept).toHaveLength(2 * 10);
    const after = new Set(trials.flatMap(({ takesAfter }) => takesAfter));
    expect(kept.some(({ id }) => after.has(id))).toBe(false);
  });

  it('shows at the later visit that one work helped and another did not, beyond doubt', () => {
    const [first, again] = surveys.filter(({ strings }) => strings === 'single strings');
    const keptOf = (surveyId: string | undefined, midi: number, stringPosition: number) =>
      takes.find(
        (take) =>
          take.isKept && take.surveyId === surveyId && take.midi === midi && take.stringPosition === stringPosition,
      )!.reading;
    const outcome = (midi: number, stringPosition: number) =>
      afterWork(keptOf(first?.id, midi, stringPosition), keptOf(again?.id, midi, stringPosition)).outcome;
    expect(outcome(72, 1)).toBe('gone');
    expect(outcome(74, 3)).toBe('same');
    expect(outcome(76, 1)).toBe('same');
  });
});
