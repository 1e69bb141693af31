/** Table 5: single takes of every note, detuned, each to be named without a hint. */
import { COMPASS_88, notesOf } from '../../src/piano/compass.ts';
import { midiToName } from '../../src/piano/note.ts';
import { percentOf } from '../support/statistics.ts';
import { takeSpec } from './accuracyTakes.ts';
import { type Bench, sized } from './bench.ts';
import { REGISTERS, registerOf } from './randomString.ts';
import { percent } from './report.ts';

const CONDITION = { snrDb: 20, lengthS: 2, detuneCents: 35 };

export async function namingTable({ pool, report, size }: Bench): Promise<void> {
  const turns = Array.from({ length: sized({ size }, 1, 4) }, (_, turn) => turn);
  const specs = turns.flatMap((turn) =>
    notesOf(COMPASS_88).map((midi) => takeSpec(midi, 500_000 + 1000 * turn + midi, CONDITION)),
  );
  const results = await pool.run(
    'take',
    specs.map((spec) => ({ spec, stringPosition: 1 as const })),
  );
  const named = specs.map((spec, index) => {
    const { outcome } = results[index]!;
    const { midi, offsetCents } = spec.strings[0]!;
    const heardMidi = outcome.found ? outcome.reading.midi : null;
    const isUsable = outcome.found && outcome.reading.quality.isUsable;
    const faults = outcome.found ? outcome.reading.quality.faults.join(', ') : outcome.reason;
    return { midi, offsetCents: offsetCents ?? 0, seed: spec.seed, heardMidi, isUsable, faults };
  });
  report.heading('5  Names of single takes of 2 s, noise 20 dB down, detuned by up to 35 cents either way');
  report.table(
    ['register', 'takes', 'named rightly %', 'usable %'],
    REGISTERS.map((register) => {
      const own = named.filter(({ midi }) => registerOf(midi) === register);
      return [
        register.name,
        String(own.length),
        percent(percentOf(own, ({ midi, heardMidi }) => midi === heardMidi)),
        percent(percentOf(own, ({ isUsable }) => isUsable)),
      ];
    }),
  );
  const isRight = ({ midi, heardMidi }: (typeof named)[number]) => midi === heardMidi;
  report.limit({
    what: `named rightly, ${named.length} detuned takes`,
    measured: percentOf(named, isRight),
    unit: '%',
    atLeast: 99.5,
  });
  report.limit({
    what: 'good takes said to be usable',
    measured: percentOf(named, ({ isUsable }) => isUsable),
    unit: '%',
    atLeast: 98,
  });
  report.worst(
    'Named wrongly or refused',
    named
      .filter((take) => !isRight(take) || !take.isUsable)
      .map(({ midi, offsetCents, seed, heardMidi, faults }) => {
        const heard = heardMidi === null ? 'no note' : midiToName(heardMidi);
        return `${midiToName(midi)} ${offsetCents.toFixed(1)} cents, seed ${seed}: ${heard} ${faults}`.trimEnd();
      }),
  );
}
