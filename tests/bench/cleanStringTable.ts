/** Table 3b: strings that do not beat, with everything that could look like a beat. */
import { midiToName } from '../../src/piano/note.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { percentOf } from '../support/statistics.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { beatTake } from './beatPlans.ts';
import { type Bench, sized } from './bench.ts';
import { randomString } from './randomString.ts';
import { figure, percent } from './report.ts';
import type { TakeInput, TakeResult } from './takeJob.ts';

type CleanCase = {
  readonly name: string;
  readonly change: Partial<NoteSpec>;
  readonly hasAftersound: boolean;
  readonly tremorPercent?: number;
};

const CLEAN_CASES: readonly CleanCase[] = [
  { name: 'single decay, noise 30 dB down', change: {}, hasAftersound: false },
  { name: 'two-stage decay, noise 30 dB down', change: {}, hasAftersound: true },
  { name: 'two-stage decay, noise 50 dB down', change: { snrDb: 50 }, hasAftersound: true },
  { name: 'two-stage decay, hum at 50 Hz', change: { hum: { hz: 50, levelDb: -45 } }, hasAftersound: true },
  { name: 'two-stage decay, hum at 60 Hz', change: { hum: { hz: 60, levelDb: -45 } }, hasAftersound: true },
  { name: 'single decay, noise 10 dB down', change: { snrDb: 10 }, hasAftersound: false },
  { name: 'two-stage decay, pink noise 20 dB down', change: { snrDb: 20, pinkNoise: true }, hasAftersound: true },
  { name: 'single decay, level wandering by 2 % (below 3 Hz)', change: {}, hasAftersound: false, tremorPercent: 2 },
];

export async function cleanStringTable({ pool, report, size }: Bench): Promise<void> {
  const step = sized({ size }, 15, 4);
  const plans = CLEAN_CASES.flatMap((clean, row) =>
    Array.from({ length: Math.ceil(88 / step) }, (_, index) =>
      cleanTake(clean, 21 + step * index + (row % step), 440_000 + 1000 * row + index),
    ),
  );
  const results = await pool.run(
    'take',
    plans.map(({ input }) => input),
  );
  const heard = plans.map((plan, index) => ({ ...plan, beating: beatingOf(results[index]!) }));
  report.heading('3b  Strings without a beat (string 1), takes of 5 s, A0–C8');
  report.table(
    ['condition', 'takes', 'called a false beat %', 'none %', 'not assessable %'],
    CLEAN_CASES.map((clean) => {
      const own = heard.filter((row) => row.clean === clean);
      const share = (kind: string) => percent(percentOf(own, ({ beating }) => beating?.kind === kind));
      return [clean.name, String(own.length), share('false beat'), share('none'), share('undetermined')];
    }),
  );
  const invented = heard.filter(({ beating }) => beating?.kind === 'false beat');
  report.limit({
    what: 'clean strings called a false beat',
    measured: (100 * invented.length) / heard.length,
    unit: '%',
    atMost: 2,
  });
  report.worst(
    'Invented',
    invented.map(({ clean, input, beating }) => {
      const partials = beating?.partialNumbers.join(' ') ?? '';
      return `${midiToName(input.spec.strings[0]!.midi)}, ${clean.name}, seed ${input.spec.seed}: ${figure(beating?.rateHz)} Hz, ${figure(beating?.depthDb)} dB, partials ${partials}`;
    }),
  );
}

function cleanTake(
  clean: CleanCase,
  midi: number,
  seed: number,
): { readonly clean: CleanCase; readonly input: TakeInput } {
  const random = seededRandom(seed);
  const string = randomString(Math.min(midi, 108), 20, random);
  const aftersound = clean.hasAftersound
    ? { ratio: 0.05 + 0.2 * random.uniform(), slowDownFactor: 2 + 4 * random.uniform() }
    : null;
  const spec = { ...beatTake([{ ...string, aftersound }], seed), ...clean.change };
  return {
    clean,
    input: {
      spec,
      stringPosition: 1,
      ...(clean.tremorPercent === undefined ? {} : { tremorPercent: clean.tremorPercent }),
    },
  };
}

function beatingOf({ outcome }: TakeResult) {
  return outcome.found ? outcome.reading.beating : null;
}
