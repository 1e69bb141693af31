/** The invented records of sample-records: a history whose block fails above a strut, and what is true of it. */
import Papa from 'papaparse';
import { midiToName, nameToMidi } from '../../src/piano/note.ts';
import { simulateHistory } from '../../src/stability/simulateHistory.ts';
import { regularVisits, usualPlan } from '../../src/stability/simulation/historyPlan.ts';
import { seededRandom } from '../support/seededRandom.ts';

export type SampleFile = { readonly name: string; readonly text: string };

const SEED = 20160401;
const VISITS = regularVisits('2016-04-02', 15, 6);

const plan = usualPlan({
  visits: VISITS,
  zone: {
    fromMidi: nameToMidi('C5') ?? 72,
    toMidi: nameToMidi('A#5') ?? 82,
    firstCentsPerYear: -1,
    growthCentsPerYear2: -0.6,
    fromDate: '2018-04-01',
  },
  settling: { restrungOn: '2015-11-10', totalCents: 14, timeConstantYears: 0.9 },
});

const INSTRUMENT = `{
  "compass": "A0-C8",
  "bassBridgeTop": "G2",
  "strutsAfter": ["G2", "B4"]
}
`;

export function sampleRecordFiles(): SampleFile[] {
  const { readings } = simulateHistory(plan, seededRandom(SEED));
  const rows = readings.map((reading) => ({
    visit_date: reading.visitedOn,
    stage: reading.stage,
    rh_percent: reading.humidityPct?.toFixed(0) ?? '',
    temp_c: reading.temperatureC?.toFixed(1) ?? '',
    note: midiToName(reading.midi),
    string: reading.stringPosition,
    cents: reading.cents.toFixed(2),
    cents_u: reading.standardUncertaintyCents?.toFixed(2) ?? '',
  }));
  const events = [
    { date: '2015-11-10', kind: 'restrung', from_note: '', to_note: '', remark: 'New wire and pins throughout' },
  ];
  return [
    { name: 'history.csv', text: `${Papa.unparse(rows, { newline: '\n' })}\n` },
    { name: 'events.csv', text: `${Papa.unparse(events, { newline: '\n' })}\n` },
    { name: 'instrument.json', text: INSTRUMENT },
  ];
}
