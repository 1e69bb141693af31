/** The takes that the accuracy, the coverage and the comparison with other estimators are counted on. */
import { hzToCents } from '../../src/piano/cents.ts';
import { midiToName } from '../../src/piano/note.ts';
import type { NoteReading } from '../../src/piano/reading.ts';
import { seededRandom } from '../support/seededRandom.ts';
import type { StringTruth } from '../support/stringTone.ts';
import type { NoteSpec } from '../support/syntheticString.ts';
import { type Bench, sized } from './bench.ts';
import { REGISTERS, type Register, randomString, spreadNotes } from './randomString.ts';

export const SNRS_DB = [0, 10, 20, 30, 40] as const;
export const LENGTHS_S = [1, 2, 3, 5] as const;
/** What the one is where the other changes. */
export const PLAIN_SNR_DB = 20;
export const PLAIN_LENGTH_S = 3;
export const SAMPLE_RATE_HZ = 48000;

export type AccuracyTake = {
  readonly register: Register;
  readonly snrDb: number;
  readonly lengthS: number;
  readonly spec: NoteSpec;
  readonly string: StringTruth;
  /** Null where no note was found. */
  readonly reading: NoteReading | null;
  readonly isNamedRightly: boolean;
};

type Plan = Pick<AccuracyTake, 'register' | 'snrDb' | 'lengthS' | 'spec'>;

export async function measureAccuracyTakes(bench: Bench): Promise<AccuracyTake[]> {
  const plans = planTakes(sized(bench, 3, 13));
  const results = await bench.pool.run(
    'take',
    plans.map(({ spec }) => ({ spec, stringPosition: 1 as const })),
  );
  return plans.map((plan, index) => {
    const { outcome, truth } = results[index]!;
    const string = truth.strings[0]!;
    const reading = outcome.found ? outcome.reading : null;
    return { ...plan, string, reading, isNamedRightly: reading?.midi === string.midi };
  });
}

function planTakes(notesPerCell: number): Plan[] {
  const conditions = [
    ...SNRS_DB.map((snrDb) => ({ snrDb, lengthS: PLAIN_LENGTH_S })),
    ...LENGTHS_S.filter((lengthS) => lengthS !== PLAIN_LENGTH_S).map((lengthS) => ({ snrDb: PLAIN_SNR_DB, lengthS })),
  ];
  return conditions.flatMap((condition, turn) =>
    REGISTERS.flatMap((register, row) =>
      spreadNotes(register, notesPerCell, turn).map((midi, index) => {
        const seed = 100_000 + 10_000 * turn + 1000 * row + index;
        return { ...condition, register, spec: takeSpec(midi, seed, condition) };
      }),
    ),
  );
}

export function takeSpec(
  midi: number,
  seed: number,
  { snrDb, lengthS, detuneCents = 20 }: { snrDb: number; lengthS: number; detuneCents?: number },
): NoteSpec {
  const random = seededRandom(seed);
  return {
    strings: [randomString(midi, detuneCents, random)],
    durationS: LEAD_S + lengthS,
    leadS: LEAD_S,
    sampleRateHz: SAMPLE_RATE_HZ,
    peak: 0.5 * 10 ** -random.uniform(),
    snrDb,
    hammerNoiseDb: -25,
    seed,
  };
}

const LEAD_S = 0.3;

export function partial1ErrorCents({ reading, string }: AccuracyTake): number {
  return reading ? Math.abs(hzToCents(reading.partial1Hz, string.partialHz[0]!)) : Number.NaN;
}

export function describeTake({ spec, snrDb, lengthS }: AccuracyTake): string {
  const [string] = spec.strings;
  const after = string?.aftersound ? `aftersound ${string.aftersound.ratio.toFixed(2)}` : 'single decay';
  return `${midiToName(string!.midi)} ${string!.offsetCents?.toFixed(1)} cents, ${snrDb} dB, ${lengthS} s, ${after}, seed ${spec.seed}`;
}
