import { beforeAll, describe, expect, it } from 'vitest';
import { demonstrationRecords } from '../../src/records/demonstration/demonstrationRecords.ts';
import type { RecordSet } from '../../src/records/recordSet.ts';
import { type JudgedRecords, judgeRecords } from '../../src/report/judgedRecords.ts';
import { OPTIONAL_SECTIONS, type OwnersPageChoice, ownersPage } from '../../src/report/ownersPage.ts';
import { ownersPageFile } from '../../src/report/ownersPageHtml.ts';
import { verdictSection } from '../../src/report/ownersVerdict.ts';
import type { ReportRecords } from '../../src/report/reportRecords.ts';
import { englishReportWords } from '../../src/report/words.ts';
import type { Drift } from '../../src/stability/drift/analyseDrift.ts';
import type { VerdictState } from '../../src/stability/drift/verdict.ts';
import { exampleInstrument, exampleVisit } from '../records/exampleRecords.ts';

const WHOLE: OwnersPageChoice = { leftOut: [], photographs: [], remark: '' };

function recordsOf({ instruments: [instrument], ...set }: RecordSet): ReportRecords {
  if (!instrument) throw new Error('a set without an instrument');
  return { ...set, instrument, takes: set.takes.filter(({ isKept }) => isKept), decisions: [] };
}

const page = (records: JudgedRecords, choice: Partial<OwnersPageChoice> = {}) =>
  ownersPage(records, englishReportWords, { ...WHOLE, ...choice });

let hall: JudgedRecords;
let grand: JudgedRecords;

beforeAll(() => {
  const [first, second] = demonstrationRecords(1908);
  if (!first || !second) throw new Error('the demonstration has fewer instruments than it had');
  grand = judgeRecords(recordsOf(first));
  hall = judgeRecords(recordsOf(second));
});

describe('the owner’s page', () => {
  it('says of a piano that holds below which slip it does, and that its movement is the season’s', () => {
    const { verdict, course, advice } = page(grand);
    const ruledOut = grand.drift.verdict.slipRuledOutAboveCentsPerYear ?? Number.NaN;
    expect(verdict.state).toBe('holding');
    expect(verdict.sentences[0]).toContain(`faster than ${ruledOut.toFixed(1)}\u00a0cents a year`);
    expect(course?.partName).toBeNull();
    expect(advice?.sentences[0]).toBe(englishReportWords.advice.holding);
  });

  it('names the part that gives way, how fast and how sure, draws it by itself and sends a technician there', () => {
    const { verdict, course, advice } = page(hall);
    expect(verdict.sentences[0]).toMatch(
      /^The strings from C5 to B5 go flat by themselves, about \d\.\d\u00a0cents a year.*sure of it\.$/,
    );
    expect(course?.partName).toBe('strings C5 to B5');
    expect(course?.course.steps.at(-1)?.part?.medianCents).toBeLessThan(-15);
    expect(advice?.sentences[0]).toContain('C5 to B5');
  });

  it('takes every figure from the records: other readings give other figures', () => {
    const later = {
      ...hall,
      visits: hall.visits.slice(0, 8),
      takes: hall.takes.filter(({ visitId }) => hall.visits.slice(0, 8).some(({ id }) => id === visitId)),
    };
    const before = page(judgeRecords(later));
    expect(before.verdict.sentences).not.toEqual(page(hall).verdict.sentences);
    expect(before.asOf).not.toBe(page(hall).asOf);
  });

  it('leaves out what is not wanted, and never the verdict, the cautions and the method', () => {
    const { verdict, cautions, method, course, falseBeats, advice, work, photographs } = page(hall, {
      leftOut: OPTIONAL_SECTIONS,
    });
    expect([course, falseBeats, advice, work, photographs]).toEqual([null, null, null, null, null]);
    expect(verdict.sentences.length * cautions.sentences.length * method.sentences.length).toBeGreaterThan(0);
  });

  it('shows the owner’s name and address only where they are wanted', () => {
    const instrument = { ...hall.instrument, ownerName: 'The school', ownerAddress: 'Hall, first floor' };
    const named = { ...hall, instrument };
    expect(page(named).facts.map(({ value }) => value)).toContain('The school');
    expect(page(named, { leftOut: ['owner'] }).facts.map(({ value }) => value)).not.toContain('The school');
  });

  it('sets a remark apart from what was measured', () => {
    const { remark, verdict } = page(hall, { remark: '  It holds perfectly. ' });
    expect(remark).toMatchObject({ text: 'It holds perfectly.', note: englishReportWords.remark.note });
    expect(verdict.state).toBe('giving way');
    expect(page(hall, { remark: '  ' }).remark).toBeNull();
  });

  it('says what is missing where nothing was measured yet', () => {
    const instrument = exampleInstrument();
    const empty = { instrument, events: [], visits: [exampleVisit(instrument)], surveys: [], takes: [], decisions: [] };
    const { verdict, course, falseBeats, work } = page(judgeRecords(empty));
    expect(verdict).toMatchObject({
      state: 'not enough evidence',
      sentences: [englishReportWords.verdict.noComparison],
    });
    expect(course?.sentences).toContain(englishReportWords.course.nothing);
    expect(falseBeats?.sentences).toEqual([englishReportWords.falseBeats.nothing]);
    expect(work?.nothing).toBe(englishReportWords.work.nothing);
  });

  it('is one file without script or outside address, whatever names and remarks hold', () => {
    const instrument = { ...hall.instrument, name: 'Grand <img src=x onerror=alert(1)>', pinBlock: '"beech" & maple' };
    const html = ownersPageFile(page({ ...hall, instrument }, { remark: '</blockquote><script>' }), englishReportWords);
    expect(html).not.toMatch(/<script|<img|<link|@import|url\(/);
    expect(new Set(html.match(/https?:\/\/[^"]*/g))).toEqual(new Set(['http://www.w3.org/2000/svg']));
    expect(html).toContain('&quot;beech&quot; &amp; maple');
  });
});

describe('the verdict in an owner’s words', () => {
  const STATES: readonly VerdictState[] = ['holding', 'watch', 'giving way', 'not enough evidence'];
  const interval = {
    fromDate: '2020-01-01',
    toDate: '2021-01-01',
    years: 1,
    humidityChangePct: null,
    hasBaseline: true,
    missingCount: 0,
    medianCents: 1,
  };
  const pin = (midi: number, centsPerYear: number, probability: number, isFlagged: boolean) => ({
    midi,
    stringPosition: 1 as const,
    slip: { centsPerYear, standardUncertainty: 0.3, probability },
    isFlagged,
  });
  const drift = (state: VerdictState, parts: Partial<Drift> = {}): Pick<JudgedRecords, 'drift' | 'history'> => ({
    history: grand.history,
    drift: {
      ...grand.drift,
      intervals: [interval],
      zones: [],
      pins: [],
      verdict: { state, grounds: [], reasons: [], slipRuledOutAboveCentsPerYear: 0.7 },
      ...parts,
    },
  });

  it.each(STATES)('has a headline and sentences for %s', (state) => {
    const section = verdictSection(drift(state), englishReportWords);
    expect(section.headline).toBe(englishReportWords.verdict.titles[state]);
    expect(section.sentences.length).toBeGreaterThan(0);
  });

  it('names the surest slipping pins, the fastest first, and counts only the others as steady', () => {
    const pins = [pin(60, -1.2, 0.9, true), pin(72, -3.4, 0.97, true), pin(80, 0, 0.01, false)];
    const { sentences } = verdictSection(drift('giving way', { pins } as Partial<Drift>), englishReportWords);
    expect(sentences[0]).toMatch(
      /^C5 left string \(3\.4.*97.*\) and C4 left string \(1\.2.*90.*\) go flat by themselves/,
    );
    expect(sentences.join(' ')).toContain('The other string keeps its place');
  });

  it('says of a suspect that it is not certain yet', () => {
    const pins = [pin(60, -1.2, 0.8, false), pin(80, 0, 0.01, false)];
    const { sentences } = verdictSection(drift('watch', { pins } as Partial<Drift>), englishReportWords);
    expect(sentences[0]).toContain(
      'C4 left string has gone flat more than chance would explain, but it is not certain yet.',
    );
  });

  it('says a zone once, however many stretches the scan found in it', () => {
    const zone = {
      fromMidi: 72,
      toMidi: 83,
      centsPerYear: -4,
      standardUncertainty: 0.3,
      probability: 0.999,
      isAccelerating: true,
      fromInterval: 0,
    };
    const zones = [zone, { ...zone, fromMidi: 70, toMidi: 85 }];
    const { sentences } = verdictSection(drift('giving way', { zones }), englishReportWords);
    expect(sentences.filter((sentence) => sentence.startsWith('The strings from'))).toHaveLength(1);
  });
});
