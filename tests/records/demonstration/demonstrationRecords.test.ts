import { describe, expect, it } from 'vitest';
import { noteCount } from '../../../src/piano/compass.ts';
import type { NoteReading } from '../../../src/piano/reading.ts';
import { medianOf } from '../../../src/piano/robustStatistics.ts';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import type { RecordSet } from '../../../src/records/recordSet.ts';
import { checkRow } from '../../../src/records/rowSchemas.ts';
import { takeToRow } from '../../../src/records/rows.ts';
import { changeBetween } from '../../../src/stability/change.ts';
import { departures } from '../../../src/stability/changeDepartures.ts';
import { type Interval, intervalsOf } from '../../../src/stability/changeIntervals.ts';

const SEED = 1908;
const sets = demonstrationRecords(SEED);
const [holding, failing, settling] = sets as [RecordSet, RecordSet, RecordSet];

type MeasuredInterval = Interval & { readonly centsOf: ReadonlyMap<number, number>; readonly set: RecordSet };

function measuredIntervals(set: RecordSet): MeasuredInterval[] {
  const readings = new Map<string, NoteReading[]>();
  for (const { surveyId, reading } of set.takes) readings.set(surveyId, [...(readings.get(surveyId) ?? []), reading]);
  const of = (ids: readonly string[]): NoteReading[] => ids.flatMap((id) => readings.get(id) ?? []);
  return intervalsOf(set.visits, set.surveys, set.events).map((interval) => {
    const before = interval.baseline.known ? of(interval.baseline.surveyIds) : [];
    const { notes } = changeBetween(before, of(interval.asFoundSurveyIds));
    return { ...interval, set, centsOf: new Map(notes.map((note) => [note.midi, note.changeCents])) };
  });
}

function medianOver(interval: MeasuredInterval, fromMidi: number, toMidi: number): number {
  return medianOf(
    [...interval.centsOf].filter(([midi]) => midi >= fromMidi && midi <= toMidi).map(([, cents]) => cents),
  );
}

describe('demonstrationRecords', () => {
  it('gives the same records for the same seed and others for another', () => {
    expect(demonstrationRecords(SEED)).toEqual(sets);
    expect(demonstrationRecords(SEED + 1)[0]?.takes[0]?.reading).not.toEqual(holding.takes[0]?.reading);
    expect(() => demonstrationRecords(0.5)).toThrow(/whole number, got 0.5/);
  });

  it('marks every instrument as invented, in the flag and in words', () => {
    for (const { instruments } of sets) {
      expect(instruments).toHaveLength(1);
      expect(instruments[0]?.isDemonstration).toBe(true);
      expect(instruments[0]?.remark).toMatch(/^Invented .* made up by a program/);
      expect(instruments[0]?.serialNumber).toBe('');
    }
  });

  it('surveys the whole compass as found and as left at every visit', () => {
    for (const { instruments, visits, surveys, takes } of sets) {
      const notes = noteCount(instruments[0]!.compass);
      for (const visit of visits) {
        const ofVisit = surveys.filter((survey) => survey.visitId === visit.id);
        const here = ofVisit.filter(({ strings }) => strings === 'centre strings');
        expect(here.map((survey) => survey.stage)).toEqual(['as-found', 'as-left']);
        for (const survey of here) {
          const kept = takes.filter((take) => take.surveyId === survey.id && take.isKept);
          expect(new Set(kept.map((take) => take.midi)).size).toBe(notes);
        }
      }
    }
  });

  it('has ten years of the grand that holds, two or three visits in each', () => {
    const years = holding.visits.map((visit) => visit.visitedOn.slice(0, 4));
    expect(holding.visits.length).toBeGreaterThanOrEqual(20);
    expect(Number(years.at(-1)) - Number(years[0])).toBe(10);
    const humidity = holding.visits.map((visit) => visit.humidityPct ?? 0);
    expect(Math.max(...humidity) - Math.min(...humidity)).toBeGreaterThan(20);
    expect(Math.max(...humidity) - Math.min(...humidity)).toBeLessThan(34);
  });

  it('consists of sound rows with ids of their own', () => {
    const ids = sets.flatMap((set) =>
      [...set.visits, ...set.surveys, ...set.takes, ...set.events].map((row) => row.id),
    );
    expect(new Set(ids).size).toBe(ids.length);
    for (const take of sets.flatMap((set) => set.takes)) expect(checkRow('takes', takeToRow(take)).isSound).toBe(true);
  });

  it('has readings that follow the stiff string, within their stated uncertainty', () => {
    const misses = sets.flatMap((set) =>
      set.takes.flatMap(({ reading }) => {
        const { f0Hz, inharmonicityB } = reading;
        if (f0Hz === null || inharmonicityB === null) return [];
        return reading.partials.map((partial) => {
          const n = partial.partialNumber;
          const expectedHz = n * f0Hz * Math.sqrt(1 + inharmonicityB * n ** 2);
          return Math.abs(partial.frequencyHz - expectedHz) / (n * partial.frequencyStandardUncertaintyHz);
        });
      }),
    );
    expect(medianOf(misses)).toBeLessThan(1.5);
    expect(misses.every((miss) => miss < 40)).toBe(true);
  });
});

describe('what the invented pianos do, read through the analysis of change', () => {
  it('the holding grand comes back with the season, sharp when damp and flat when dry, and keeps its pitch over the years', () => {
    const rows = measuredIntervals(holding).map((interval) => ({
      humidity: interval.humidityChangePct ?? 0,
      years: interval.years,
      cents: medianOver(interval, 60, 75),
    }));
    for (const { humidity, cents } of rows.filter((row) => Math.abs(row.humidity) > 8))
      expect(Math.sign(cents)).toBe(Math.sign(humidity));
    // Least squares of cents on humidity and years, by the normal equations.
    const sum = (term: (row: (typeof rows)[number]) => number): number =>
      rows.reduce((total, row) => total + term(row), 0);
    const [hh, hy, yy] = [
      sum((row) => row.humidity ** 2),
      sum((row) => row.humidity * row.years),
      sum((row) => row.years ** 2),
    ];
    const [hc, yc] = [sum((row) => row.humidity * row.cents), sum((row) => row.years * row.cents)];
    const centsPerPct = (hc * yy - yc * hy) / (hh * yy - hy ** 2);
    const centsPerYear = (hh * yc - hy * hc) / (hh * yy - hy ** 2);
    expect(centsPerPct).toBeGreaterThan(0.4);
    expect(centsPerPct).toBeLessThan(0.7);
    expect(Math.abs(centsPerYear)).toBeLessThan(1);
  });

  it('the failing zone of the upright leaves the notes on either side, faster in the later years', () => {
    const lag = measuredIntervals(failing).map((interval) => {
      const beside = (medianOver(interval, 66, 71) + medianOver(interval, 84, 89)) / 2;
      return { cents: medianOver(interval, 72, 83) - beside, years: interval.years };
    });
    const rate = (part: typeof lag): number =>
      part.reduce((sum, entry) => sum + entry.cents, 0) / part.reduce((sum, entry) => sum + entry.years, 0);
    // From 1 to 7 cents a year: the first third lies around 2, the last around 6.
    expect(rate(lag.slice(0, 4))).toBeLessThan(-0.5);
    expect(rate(lag.slice(0, 4))).toBeGreaterThan(-3.5);
    expect(rate(lag.slice(-4))).toBeLessThan(-4.5);
  });

  it('the restrung grand falls as a whole, less each time', () => {
    const intervals = measuredIntervals(settling);
    // With the season taken out at the rate the plan gives to the notes above A4.
    const fall = intervals.map((interval) => medianOver(interval, 84, 108) - 0.2 * (interval.humidityChangePct ?? 0));
    const rate = (from: number, to: number): number => {
      const part = intervals.slice(from, to);
      return (
        fall.slice(from, to).reduce((sum, cents) => sum + cents, 0) / part.reduce((sum, one) => sum + one.years, 0)
      );
    };
    expect(rate(0, 3)).toBeLessThan(-25);
    expect(rate(3, 6)).toBeLessThan(-8);
    expect(rate(7, 9)).toBeGreaterThan(-5);
  });

  it('no string of the holding grand stands out from its neighbours again and again', () => {
    const counts = new Map<number, number>();
    for (const { centsOf } of measuredIntervals(holding)) {
      const notes = [...centsOf].map(([midi, changeCents]) => ({
        midi,
        changeCents,
        stringPosition: 2 as const,
        standardUncertaintyCents: 0.1,
        method: 'partials' as const,
        partialCount: 5,
      }));
      const called = departures(notes, holding.instruments[0]!.bassBridgeTopMidi).filter((entry) => entry.standsOut);
      for (const { midi } of called) counts.set(midi, (counts.get(midi) ?? 0) + 1);
    }
    // The lowest string of the long bridge moves most and may stand out at a great swing.
    expect([...counts].filter(([, count]) => count > 6)).toEqual([]);
  });
});
