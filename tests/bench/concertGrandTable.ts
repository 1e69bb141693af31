/** Table 6: 30 recorded notes of one concert grand. The truth is not known; the names are. */
import { typicalInharmonicity } from '../../src/analysis/tone/typicalInharmonicity.ts';
import { hzToCents } from '../../src/piano/cents.ts';
import { midiToHz, midiToName } from '../../src/piano/note.ts';
import { median, percentOf } from '../support/statistics.ts';
import type { Stretch } from './aubioPeers.ts';
import { aubioPitches, hasAubio } from './aubioPeers.ts';
import { type Bench, sized } from './bench.ts';
import { figure, type Report } from './report.ts';
import { readStored, STORED_NOTES_SOURCE, type StoredNote, type StoredResult, storedNotes } from './storedNotes.ts';

const PEERS = ['pitchfinder YIN', 'pitchfinder ACF2PLUS', 'pitchfinder Macleod'] as const;

type Row = StoredNote & StoredResult & { readonly aubioHz: number | null };

export async function concertGrandTable(bench: Bench): Promise<void> {
  const { pool, report } = bench;
  const notes = storedNotes().filter((_, index) => index % sized(bench, 3, 1) === 0);
  const results = await pool.run('stored note', notes);
  const aubioHz = await heardByAubio(bench, notes, results);
  const rows = notes.map((note, index) => ({ ...note, ...results[index]!, aubioHz: aubioHz[index] ?? null }));
  report.heading('6  Recorded concert grand, every minor third, nothing said');
  report.table(
    [
      'note',
      'named',
      'cents',
      '± (1 σ)',
      'YIN',
      'ACF2PLUS',
      'Macleod',
      'aubio yinfft',
      'B × 10⁻⁴',
      'B of the curve',
      'ratio',
      'lives, s',
      'beating',
      'rate, Hz',
      'quality',
    ],
    rows.map(rowText),
  );
  report.remark(
    'Cents are of partial 1 against equal temperament at A4 = 440 Hz. The curve: F. Rigaud, B. David, L. Daudet, J. Acoust. Soc. Am. 133 (2013)\n' +
      '3107–3118, two asymptotes, constants of an average piano; large pianos lie below it in the bass. Lives: time for 60 dB.\n' +
      STORED_NOTES_SOURCE,
  );
  concertGrandLimits(rows, report);
}

async function heardByAubio(
  { folder, progress }: Bench,
  notes: readonly StoredNote[],
  results: readonly StoredResult[],
) {
  if (!hasAubio()) return notes.map(() => null);
  progress('aubio yinfft');
  const stretches: Stretch[] = [];
  for (const [index, { file, midi }] of notes.entries()) {
    const { samples, sampleRateHz } = await readStored(file);
    const { outcome } = results[index]!;
    const from = Math.round(((outcome.found ? outcome.reading.onsetS : 0) + 0.05) * sampleRateHz);
    stretches.push({ samples: samples.slice(from, from + (midi >= 84 ? 0.3 : 1) * sampleRateHz), sampleRateHz, midi });
  }
  return aubioPitches(stretches, 'yinfft', folder);
}

function rowText({ midi, outcome, peers, aubioHz }: Row): string[] {
  const nominalHz = midiToHz(midi, 440);
  const cents = (hz: number | null | undefined) =>
    hz === null || hz === undefined ? '–' : hzToCents(hz, nominalHz).toFixed(1);
  const others = [...PEERS.map((name) => cents(peers[name])), cents(aubioHz)];
  if (!outcome.found) return [midiToName(midi), outcome.reason, '–', '–', ...others];
  const { reading } = outcome;
  const curveB = typicalInharmonicity(midi);
  const b = reading.inharmonicityB;
  return [
    midiToName(midi),
    midiToName(reading.midi),
    cents(reading.partial1Hz),
    figure(reading.offsetStandardUncertaintyCents),
    ...others,
    figure(b === null ? null : 1e4 * b),
    figure(1e4 * curveB),
    figure(b === null ? null : b / curveB),
    figure(reading.lifeTimeS),
    reading.beating.kind,
    figure(reading.beating.rateHz),
    reading.quality.faults.join(' ') || 'good',
  ];
}

function concertGrandLimits(rows: readonly Row[], report: Report): void {
  const isNamed = ({ midi, outcome }: Row) => outcome.found && outcome.reading.midi === midi;
  report.limit({ what: 'recorded notes named rightly', measured: percentOf(rows, isNamed), unit: '%', atLeast: 100 });
  const ratios = rows.flatMap(({ midi, outcome }) => {
    const b = outcome.found ? outcome.reading.inharmonicityB : null;
    return b === null ? [] : [b / typicalInharmonicity(midi)];
  });
  const isLikely = (ratio: number) => ratio > 0.4 && ratio < 2.5;
  report.limit({
    what: 'recorded notes: B within 0.4 to 2.5 of the curve',
    measured: percentOf(ratios, isLikely),
    unit: '%',
    atLeast: 90,
  });
  const near = rows.flatMap(({ outcome, peers }) => {
    const hz = outcome.found ? outcome.reading.partial1Hz : null;
    const others = PEERS.map((name) => peers[name] ?? null).filter((other) => other !== null);
    return hz === null ? [] : [others.some((other) => Math.abs(hzToCents(hz, other)) < 15)];
  });
  report.limit({
    what: 'recorded notes: partial 1 within 15 cents of one of the other estimators',
    measured: percentOf(near, (isNear) => isNear),
    unit: '%',
    atLeast: 90,
  });
  report.worst('B unlike the neighbours’ by more than a quarter', oddInharmonicities(rows));
}

/** B over the curve runs smoothly through the compass: a note far from its neighbours was misheard, or has a string unlike theirs. */
function oddInharmonicities(rows: readonly Row[]): string[] {
  const known = rows.flatMap(({ midi, outcome }) => {
    const b = outcome.found ? outcome.reading.inharmonicityB : null;
    return b === null ? [] : [{ midi, ratio: b / typicalInharmonicity(midi) }];
  });
  return known.flatMap(({ midi, ratio }, index) => {
    const around = known.slice(Math.max(0, index - 2), index + 3).map((neighbour) => neighbour.ratio);
    const usual = median(around)!;
    return Math.abs(ratio / usual - 1) > 0.25
      ? [`${midiToName(midi)}: ${figure(ratio)} of the curve, around it ${figure(usual)}`]
      : [];
  });
}
