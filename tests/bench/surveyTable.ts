/** Table 7: strikes found and invented in surveys of 88 notes. */
import { midiToName } from '../../src/piano/note.ts';
import { median, quantile } from '../support/statistics.ts';
import type { SceneOptions } from '../survey/scene.ts';
import { type Bench, sized } from './bench.ts';
import { figure } from './report.ts';

/** Levels of the notes lie up to 20 dB apart; noise is counted from the softest. */
const SCENES: Readonly<Record<string, SceneOptions>> = {
  'noise 20 dB down': { seed: 71, snrDb: 20 },
  'no pause, pedal held': { seed: 72, snrDb: 20, gapS: [0, 0], isPedalHeld: true, holdS: [1.5, 3] },
  'pink noise, hum, dampers and knocks heard': {
    seed: 73,
    snrDb: 20,
    pinkNoise: true,
    hum: { hz: 50, levelDb: -50 },
    knockShare: 0.5,
    releaseNoiseDb: -25,
    hammerNoiseDb: -20,
  },
  'deep false beats on every partial': { seed: 74, snrDb: 20, falseBeatShare: 1 },
};

export async function surveyTable({ pool, report, size }: Bench): Promise<void> {
  const names = Object.keys(SCENES).slice(0, sized({ size }, 1, 4));
  const results = await pool.run(
    'scene',
    names.map((name) => ({ options: { sampleRateHz: 44100, ...SCENES[name]! } })),
  );
  report.heading('7  Surveys of 88 notes, 1.2 to 3 s a note, 44.1 kHz');
  report.table(
    [
      'survey',
      'length, s',
      'played',
      'strikes found',
      'invented',
      'strike time off, median ms',
      '95 % below',
      'named wrongly',
    ],
    names.map((name, index) => {
      const { durationS, playedCount, foundCount, inventedCount, onsetErrorsMs, misnamed } = results[index]!;
      const errors = onsetErrorsMs.map(Math.abs);
      return [
        name,
        durationS.toFixed(0),
        String(playedCount),
        String(foundCount),
        String(inventedCount),
        figure(median(errors)),
        figure(quantile(errors, 0.95)),
        String(misnamed.length),
      ];
    }),
  );
  const total = (pick: (result: (typeof results)[number]) => number) =>
    results.reduce((sum, result) => sum + pick(result), 0);
  const played = total(({ playedCount }) => playedCount);
  report.limit({
    what: 'strikes of the surveys found',
    measured: (100 * total(({ foundCount }) => foundCount)) / played,
    unit: '%',
    atLeast: 100,
  });
  report.limit({
    what: 'strikes invented',
    measured: total(({ inventedCount }) => inventedCount),
    unit: '',
    atMost: 0,
  });
  report.limit({
    what: 'notes of the surveys named rightly',
    measured: 100 - (100 * total(({ misnamed }) => misnamed.length)) / played,
    unit: '%',
    atLeast: 99,
  });
  report.worst(
    'Named wrongly',
    names.flatMap((name, index) =>
      results[index]!.misnamed.map(({ midi, heardMidi, atS }) => {
        const heard = heardMidi === null ? 'nothing' : midiToName(heardMidi);
        return `${name}, seed ${SCENES[name]!.seed}: ${midiToName(midi)} at ${atS.toFixed(1)} s heard as ${heard}`;
      }),
    ),
  );
}
