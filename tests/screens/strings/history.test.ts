import { describe, expect, it } from 'vitest';
import { COMPASS_88 } from '../../../src/piano/compass.ts';
import type { EventId, InstrumentId, SurveyId } from '../../../src/piano/ids.ts';
import type { Instrument, InstrumentEvent } from '../../../src/piano/instrument.ts';
import { beatMapLayout } from '../../../src/screens/strings/beatMap.ts';
import { deskRows } from '../../../src/screens/strings/deskRows.ts';
import { livelyCurve, livelySentences, livelySeries } from '../../../src/screens/strings/livelyChart.ts';
import { stringHistory, workOutcomes } from '../../../src/screens/strings/stringHistory.ts';
import { chosenTakes, surveyChoices } from '../../../src/screens/strings/stringReadings.ts';
import { beatNowHz, unisonRows } from '../../../src/screens/strings/unisonRows.ts';
import { progressOf, workGroups } from '../../../src/screens/strings/workGroups.ts';
import { compareLives, livelyNotes } from '../../../src/stringing/life/livelyNotes.ts';
import { texts } from '../../../src/ui/texts.ts';
import { readingAt } from '../plainReading.ts';
import { beatingReading } from './beatingReading.ts';
import { decisionOf, takesOn } from './stringRecordsOf.ts';

const place = { midi: 60, stringPosition: 2 } as const;
const takes = [
  ...takesOn('2024-03-01', [beatingReading(60, { rateHz: 1.5, depthDb: 10 }), beatingReading(62)]),
  ...takesOn('2025-03-01', [beatingReading(60)]),
];
const event: InstrumentEvent = {
  id: 'e' as EventId,
  instrumentId: 'i' as InstrumentId,
  happenedOn: '2024-04-01',
  kind: 'string-replaced',
  fromMidi: 61,
  toMidi: 70,
  remark: '',
};
const records = {
  instrument: {} as Instrument,
  visits: [],
  surveys: [],
  events: [event],
  takes,
  withSound: new Set<never>(),
  failingPins: new Set<string>(),
};
const bench = { decisions: [decisionOf({ doneOn: '2024-06-01' })], trials: [] };

describe('readings', () => {
  it('are the newest of each string, or those of one survey', () => {
    const dates = (chosen: typeof takes) => chosen.map(({ take, visit }) => [take.midi, visit.visitedOn]);
    expect(dates(chosenTakes(takes, 'newest'))).toEqual([
      [60, '2025-03-01'],
      [62, '2024-03-01'],
    ]);
    expect(dates(chosenTakes(takes, 's 2024-03-01' as SurveyId))).toEqual([
      [60, '2024-03-01'],
      [62, '2024-03-01'],
    ]);
    expect(surveyChoices(takes).map(({ count }) => count)).toEqual([1, 2]);
  });
});

describe('a string over the visits', () => {
  it('has its surveys and the work on it, the newest first, and nothing of its neighbours', () => {
    expect(stringHistory(records, bench, place).map(({ kind, on }) => [kind, on])).toEqual([
      ['survey', '2025-03-01'],
      ['work', '2024-06-01'],
      ['survey', '2024-03-01'],
    ]);
    expect(stringHistory(records, bench, { midi: 62, stringPosition: 2 }).map(({ kind }) => kind)).toEqual([
      'event',
      'survey',
    ]);
  });

  it('says what the work changed, from the last recording before to the first one after', () => {
    expect(workOutcomes(takes, bench, place)).toMatchObject([{ outcome: 'gone' }]);
    expect(workOutcomes(takes.slice(0, 2), bench, place)).toMatchObject([{ outcome: 'not recorded' }]);
    expect(workOutcomes(takes.slice(2), bench, place)).toMatchObject([{ outcome: 'no before' }]);
  });
});

describe('the map', () => {
  const rows = deskRows(chosenTakes(takes, 'newest'), takes, bench);

  it('has every note in one row where there is room, and in several on a narrow page', () => {
    expect(beatMapLayout(rows, COMPASS_88, [], 960).blocks).toHaveLength(1);
    const narrow = beatMapLayout(rows, COMPASS_88, [40], 340);
    expect(narrow.blocks.length).toBeGreaterThan(2);
    for (const { endX } of narrow.blocks) expect(endX).toBeLessThanOrEqual(340);
    expect(narrow.blocks.flatMap(({ cells }) => cells.map(({ row }) => row.place.midi))).toEqual([60, 62]);
    expect(narrow.blocks.flatMap(({ breaks }) => breaks)).toHaveLength(1);
  });
});

describe('unisons', () => {
  it('are matched note by note where two strings were recorded, and beat by the distance of their partials 1', () => {
    const readings = [
      readingAt(60, 0, { stringPosition: 1 }),
      readingAt(60, 2, { stringPosition: 3 }),
      readingAt(62, 0),
    ];
    const rows = unisonRows(readings);
    expect(rows.map(({ midi }) => midi)).toEqual([60]);
    // 2 cents at 261.63 Hz are 261.63·(2^(2/1200) − 1) Hz.
    expect(beatNowHz(rows[0]!)).toBeCloseTo(0.302, 2);
  });
});

describe('the work list', () => {
  it('counts what asks for doing, and only the decision that stands', () => {
    const groups = workGroups([
      decisionOf({ midi: 60, choice: 'replace wire', doneOn: '2024-05-01' }),
      decisionOf({ midi: 62, choice: 'bridge work' }),
      decisionOf({ midi: 62, choice: 'replace pin', decidedOn: '2024-07-01' }),
      decisionOf({ midi: 64, choice: 'leave' }),
    ]);
    expect(groups.map(({ choice }) => choice)).toEqual(['replace pin', 'replace wire', 'leave']);
    expect(progressOf(groups)).toEqual({ done: 1, all: 2 });
  });
});

describe('how lively the scale is', () => {
  const lives = (share: number, weakMidi: number | null) =>
    Array.from({ length: 30 }, (_, index) => {
      const midi = 45 + index;
      // A few per cent from note to note, as a deterministic wave.
      const lifeTimeS = 20 * 2 ** (-index / 14) * (1 + 0.04 * Math.sin(7 * index)) * share;
      return { ...readingAt(midi, 0), lifeTimeS: midi === weakMidi ? lifeTimeS / 4 : lifeTimeS };
    });

  it('names a note that dies early, and draws it by another sign', () => {
    const notes = livelyNotes(lives(1, 60));
    expect(livelySentences(notes, null)[0]).toMatch(/^Weak.*C4, centre string/);
    expect(livelySeries(notes, null).find(({ name }) => name === texts.strings.lively.weak)?.points).toHaveLength(1);
    expect(livelyCurve(notes)?.stretches[0]).toHaveLength(30);
  });

  it('names a note that lost life since, beside what all have in common', () => {
    const comparison = compareLives(lives(1, null), lives(0.8, 60));
    const sentences = livelySentences(livelyNotes(lives(0.8, 60)), comparison);
    expect(sentences.join(' ')).toMatch(/80\D%.*C4, centre string/);
    expect(livelySentences(livelyNotes(lives(1, null)), compareLives(lives(1, null), lives(1, null))).at(-1)).toBe(
      texts.strings.lively.noChange,
    );
  });
});
