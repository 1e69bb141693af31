/** Table 3c: strings out of tune told from false beats, where nobody said which strings sound. */
import { midiToName } from '../../src/piano/note.ts';
import type { BeatingKind } from '../../src/piano/reading.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { percentOf } from '../support/statistics.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { type Band, beatTake, planFalseBeat } from './beatPlans.ts';
import { type Bench, sized } from './bench.ts';
import { randomString } from './randomString.ts';
import { percent } from './report.ts';

type Truth = { readonly name: string; readonly kind: BeatingKind; plan(seed: number): NoteSpec };
type Heard = {
  readonly truth: Truth;
  readonly spec: NoteSpec;
  readonly kind: BeatingKind | 'no note';
  /** Why there is no note. */
  readonly detail: string;
};

const TRUTHS: readonly Truth[] = [
  ...(
    [
      [0.3, 0.6],
      [0.6, 1.2],
      [1.2, 2.5],
      [2.5, 5],
    ] as const
  ).flatMap((band) => [2, 3].map((stringCount) => unison(band, stringCount))),
  falseBeat([0.3, 1], [4, 20]),
  falseBeat([1, 5], [4, 20]),
  { name: 'one string, two-stage decay', kind: 'none', plan: (seed) => beatTake([cleanString(seed)], seed) },
];

function unison([low, high]: Band, stringCount: number): Truth {
  return {
    name: `${stringCount} strings ${low}–${high} cents apart`,
    kind: 'unison',
    plan(seed) {
      const random = seededRandom(seed);
      const midi = 36 + Math.floor(61 * random.uniform());
      const apartCents = low * (high / low) ** random.uniform();
      const string = randomString(midi, 10, random);
      const offsets = [0, apartCents, apartCents * random.uniform()].slice(0, stringCount);
      const strings = offsets.map((offset) => ({
        ...string,
        offsetCents: string.offsetCents! + offset,
        decayTimeS: string.decayTimeS! * Math.exp(0.15 * random.normal()),
      }));
      return beatTake(strings, seed);
    },
  };
}

function falseBeat(rateBand: Band, depthBand: Band): Truth {
  const name = `one string, false beat of ${rateBand.join('–')} Hz, ${depthBand.join('–')} dB`;
  return { name, kind: 'false beat', plan: (seed) => planFalseBeat(rateBand, depthBand, seed).spec };
}

function cleanString(seed: number) {
  const random = seededRandom(seed);
  const string = randomString(36 + Math.floor(61 * random.uniform()), 10, random);
  return { ...string, aftersound: { ratio: 0.15, slowDownFactor: 4 } };
}

const KINDS = ['unison', 'false beat', 'undetermined', 'none', 'no note'] as const;

export async function unisonTable({ pool, report, size }: Bench): Promise<void> {
  const count = sized({ size }, 4, 16);
  const plans = TRUTHS.flatMap((truth, row) =>
    Array.from({ length: count }, (_, index) => ({ truth, spec: truth.plan(470_000 + 1000 * row + index) })),
  );
  const results = await pool.run(
    'take',
    plans.map(({ spec }) => ({ spec, stringPosition: 0 as const })),
  );
  const heard: Heard[] = plans.map((plan, index) => {
    const { outcome } = results[index]!;
    return {
      ...plan,
      kind: outcome.found ? outcome.reading.beating.kind : 'no note',
      detail: outcome.found ? '' : outcome.reason,
    };
  });
  report.heading('3c  Unison or false beat, nothing said (string 0), takes of 5 s, C2–C7');
  report.table(
    ['what sounds', 'takes', ...KINDS.map((kind) => `${kind} %`)],
    TRUTHS.map((truth) => {
      const own = heard.filter((row) => row.truth === truth);
      return [
        truth.name,
        String(own.length),
        ...KINDS.map((kind) => percent(percentOf(own, (row) => row.kind === kind))),
      ];
    }),
  );
  const beating = heard.filter(({ truth }) => truth.kind !== 'none');
  const isConfused = ({ truth, kind }: Heard) => (kind === 'unison' || kind === 'false beat') && kind !== truth.kind;
  report.limit({
    what: 'unison and false beat taken for each other',
    measured: percentOf(beating, isConfused),
    unit: '%',
    atMost: 5,
  });
  const wide = beating.filter(({ truth }) => truth.kind === 'unison' && !/ 0\.3/.test(truth.name));
  report.limit({
    what: 'unisons of 0.6 cents and more called a unison',
    measured: percentOf(wide, ({ kind }) => kind === 'unison'),
    unit: '%',
    atLeast: 80,
  });
  const falseOnes = beating.filter(({ truth }) => truth.kind === 'false beat');
  report.limit({
    what: 'false beats called a false beat, nothing said',
    measured: percentOf(falseOnes, ({ kind }) => kind === 'false beat'),
    unit: '%',
    atLeast: 80,
  });
  report.worst('Taken for each other', heard.filter(isConfused).map(confusionText));
  report.worst('Given no note', heard.filter(({ kind }) => kind === 'no note').map(confusionText));
}

function confusionText({ truth, spec, kind, detail }: Heard): string {
  const [first] = spec.strings;
  const offsets = spec.strings.map(({ offsetCents }) => ((offsetCents ?? 0) - (first?.offsetCents ?? 0)).toFixed(2));
  const beats = (first?.falseBeats ?? []).map(
    (beat) => `partial ${beat.partialNumber} ${beat.splitHz.toFixed(2)} Hz ratio ${beat.ratio.toFixed(2)}`,
  );
  const what = beats.length > 0 ? beats.join(', ') : `${offsets.join(' ')} cents`;
  return `${midiToName(first!.midi)}, ${truth.name} (${what}), seed ${spec.seed}: ${kind} ${detail}`.trimEnd();
}
