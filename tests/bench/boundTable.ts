/** Table 2: scatter of the frequency of a single damped sinusoid against the least that any estimator can have. */
import { frequencyBoundHz } from '../../src/analysis/signal/cramerRao.ts';
import { midiToName } from '../../src/piano/note.ts';
import { median, rootMeanSquare } from '../support/statistics.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { typicalDecayTimeS } from '../support/typicalPiano.ts';
import { type Bench, sized } from './bench.ts';
import { figure } from './report.ts';
import type { TakeResult } from './takeJob.ts';

type Cell = { readonly midi: number; readonly decayTimeS: number; readonly snrDb: number };

const SNRS_DB = [0, 10, 20, 30, 40];
const LENGTH_S = 3;
const LEAD_S = 0.2;
const SAMPLE_RATE_HZ = 48000;

/** A1 to A7 with the decay usual there, and A4 dying three times as fast and as slowly. */
const TONES: readonly Omit<Cell, 'snrDb'>[] = [
  ...[33, 45, 57, 69, 81, 93, 105].map((midi) => ({ midi, decayTimeS: typicalDecayTimeS(midi) })),
  ...[1 / 3, 3].map((factor) => ({ midi: 69, decayTimeS: factor * typicalDecayTimeS(69) })),
];

export async function boundTable({ pool, report, size }: Bench): Promise<void> {
  const trialCount = sized({ size }, 6, 20);
  const cells = TONES.flatMap((tone) => SNRS_DB.map((snrDb) => ({ ...tone, snrDb })));
  const inputs = cells.flatMap((cell, row) =>
    Array.from({ length: trialCount }, (_, trial) => ({
      spec: tonePlan(cell, 200_000 + 1000 * row + trial),
      stringPosition: 1 as const,
      isNoteGiven: true,
    })),
  );
  const results = await pool.run('take', inputs);
  const ratios = cells.map((_, row) =>
    ratiosOf(results.slice(row * trialCount, (row + 1) * trialCount), inputs[row * trialCount]!.spec),
  );
  report.heading(
    '2  Single damped sinusoid in white noise, 3 s: RMS error over the Cramér–Rao bound of the whole tone',
  );
  report.table(
    ['tone', 'decay, s for 60 dB', ...SNRS_DB.map((snrDb) => `${snrDb} dB`), 'not found'],
    TONES.map(({ midi, decayTimeS }, tone) => {
      const own = SNRS_DB.map((_, column) => ratios[tone * SNRS_DB.length + column]!);
      const lost = own.reduce((sum, cell) => sum + trialCount - cell.length, 0);
      return [midiToName(midi), figure(decayTimeS), ...own.map((cell) => figure(rootMeanSquare(cell))), String(lost)];
    }),
  );
  report.remark(
    `${trialCount} tones a cell, so each ratio is known to ${Math.round(100 / Math.sqrt(2 * trialCount))} %. Note and strike are given.`,
  );
  const all = ratios.map(rootMeanSquare).filter((ratio) => ratio !== undefined);
  report.limit({
    what: 'RMS error over the Cramér–Rao bound, median of the cells',
    measured: median(all),
    unit: '',
    atMost: 1.2,
  });
  report.limit({
    what: '… largest cell',
    measured: all.length === 0 ? undefined : Math.max(...all),
    unit: '',
    atMost: largestByChance(trialCount),
  });
  report.worst('Furthest from the truth, in bounds', furthest(ratios, inputs));
}

function tonePlan({ midi, decayTimeS, snrDb }: Cell, seed: number): NoteSpec {
  return {
    strings: [{ midi, decayTimeS, partialCount: 1, offsetCents: ((seed * 7) % 31) - 15 }],
    durationS: LEAD_S + LENGTH_S,
    leadS: LEAD_S,
    sampleRateHz: SAMPLE_RATE_HZ,
    snrDb,
    seed,
  };
}

/** Error of partial 1 in units of the bound, one for each tone found. */
function ratiosOf(results: readonly TakeResult[], { strings }: NoteSpec): number[] {
  return results.flatMap(({ outcome, truth }) => {
    const partial = outcome.found
      ? outcome.reading.partials.find(({ partialNumber }) => partialNumber === 1)
      : undefined;
    if (!partial) return [];
    const string = truth.strings[0]!;
    const boundHz = frequencyBoundHz({
      amplitude: string.amplitudes[0]! * truth.scale,
      dampingPerS: Math.log(1000) / strings[0]!.decayTimeS!,
      noiseRms: truth.noiseRms,
      durationS: LENGTH_S,
      sampleRateHz: SAMPLE_RATE_HZ,
    });
    return [(partial.frequencyHz - string.partialHz[0]!) / boundHz];
  });
}

function furthest(ratios: readonly (readonly number[])[], inputs: readonly { readonly spec: NoteSpec }[]): string[] {
  const trialCount = inputs.length / ratios.length;
  return ratios
    .flatMap((cell, row) =>
      cell.map((ratio, trial) => ({
        ratio,
        spec: inputs[row * trialCount + trial]!.spec,
        isWhole: cell.length === trialCount,
      })),
    )
    .filter(({ ratio, isWhole }) => isWhole && Math.abs(ratio) > 4)
    .sort((a, b) => Math.abs(b.ratio) - Math.abs(a.ratio))
    .map(
      ({ ratio, spec }) =>
        `${midiToName(spec.strings[0]!.midi)}, ${spec.snrDb} dB, decay ${figure(spec.strings[0]!.decayTimeS)} s, seed ${spec.seed}: ${ratio.toFixed(1)}`,
    );
}

/** Cells that are all at 1.2 scatter, since each is an RMS of so few: the largest of 45 lies 2.5 standard deviations up at most. */
function largestByChance(trialCount: number): number {
  return Number((1.2 * (1 + 2.5 / Math.sqrt(2 * trialCount))).toFixed(2));
}
