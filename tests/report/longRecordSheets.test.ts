import { expect, it } from 'vitest';
import { writeCsvTable } from '../../src/files/csvTable.ts';
import { readEventsCsv, readHistoryCsv } from '../../src/files/historyCsv.ts';
import { hzToCents } from '../../src/piano/cents.ts';
import { midiToHz } from '../../src/piano/note.ts';
import { demonstrationRecords } from '../../src/records/demonstration/demonstrationRecords.ts';
import { judgeRecords } from '../../src/report/judgedRecords.ts';
import { longRecordFile } from '../../src/report/longRecord.ts';
import { eventSheet, readingSheet } from '../../src/report/longRecordSheets.ts';
import { englishReportWords } from '../../src/report/words.ts';
import { COMMON_PITCH_HZ, historyOfRecords } from '../../src/stability/historyOfRecords.ts';

/** The hall's last three visits, every fourth note, one of them unusable, at two pitch standards. */
function records() {
  const [, set] = demonstrationRecords(1908);
  const [instrument] = set?.instruments ?? [];
  if (!set || !instrument) throw new Error('the demonstration has fewer instruments than it had');
  const visits = set.visits.slice(-3).map((visit, index) => ({ ...visit, pitchStandardHz: index === 0 ? 442 : 440 }));
  const surveys = set.surveys.filter(({ visitId }) => visits.some(({ id }) => id === visitId));
  const takes = set.takes.flatMap((take) => {
    const visit = visits.find(({ id }) => id === take.visitId);
    if (!visit || take.midi % 4 !== 0) return [];
    return [{ ...take, reading: { ...take.reading, pitchStandardHz: visit.pitchStandardHz } }];
  });
  const [first, ...rest] = takes;
  if (!first) throw new Error('no take is left');
  const clipped = {
    ...first.reading,
    quality: { ...first.reading.quality, isUsable: false, faults: ['clipped' as const] },
  };
  return {
    instrument,
    visits,
    surveys,
    events: set.events,
    decisions: [],
    takes: [{ ...first, reading: clipped }, ...rest],
  };
}

it('writes readings and work that the drift command reads back as the records have them', () => {
  const own = records();
  const history = historyOfRecords(own);
  const read = readHistoryCsv(writeCsvTable(readingSheet(own)));
  expect(read.ok && read.rows).toHaveLength(history.readings.length);
  const [cells] = read.ok ? read.rows : [];
  expect(cells).toMatchObject({ stage: 'as-found', stringPosition: 2, humidityPct: history.readings[0]?.humidityPct });
  for (const [index, row] of (read.ok ? read.rows : []).entries()) {
    expect(row.midi).toBe(history.readings[index]?.midi);
    // The table has partial 1 as it was read; the program's own judgement takes the other partials in, which moves it by little.
    const takes = own.takes.filter(({ midi, stringPosition }) => midi === row.midi && stringPosition !== 0);
    const read = takes.map(({ reading }) => hzToCents(reading.partial1Hz, midiToHz(row.midi, COMMON_PITCH_HZ)));
    expect(Math.min(...read.map((cents) => Math.abs(cents - row.cents)))).toBeLessThan(1e-6);
    expect(Math.abs(row.cents - (history.readings[index]?.cents ?? Number.NaN))).toBeLessThan(0.5);
  }
  expect(readEventsCsv(writeCsvTable(eventSheet(own)))).toEqual({ ok: true, rows: history.events });
});

it('lists an unusable take with its reason and no cents', () => {
  const { columns, rows } = readingSheet(records());
  const faulty = rows.filter((row) => row[columns.indexOf('usable')] === 'no');
  expect(faulty.map((row) => [row[columns.indexOf('cents')], row[columns.indexOf('faults')]])).toEqual([
    [null, 'clipped'],
  ]);
});

it('is one file without script or outside address that holds every visit and comparison', () => {
  const own = judgeRecords(records());
  const html = longRecordFile({ ...own, torques: [], trials: [] }, englishReportWords);
  expect(html).not.toMatch(/<script|<link|@import|url\(/);
  for (const { visitedOn } of own.visits) expect(html).toContain(visitedOn);
  // The course for wide and for narrow screens, slips, humidity's answer where it is known, one chart a comparison, inharmonicity and life.
  const charts = 2 + 1 + (own.drift.detail.isHumidityKnown ? 1 : 0) + own.drift.intervals.length + 2;
  expect(html.match(/<svg/g)).toHaveLength(charts);
});
