/** The synthetic recordings of sample-audio, and what is true about them. tools/makeSampleAudio.mjs writes them. */
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { hzToCents } from '../../src/piano/cents.ts';
import { COMPASS_88, notesOf } from '../../src/piano/compass.ts';
import { midiToHz, midiToName } from '../../src/piano/note.ts';
import { seededRandom } from '../support/seededRandom.ts';
import type { StringTruth } from '../support/stringTone.ts';
import { type NoteSpec, synthesizeNote } from '../support/syntheticString.ts';
import { synthesizeSurvey } from '../support/syntheticSurvey.ts';
import { typicalB } from '../support/typicalPiano.ts';

export type SampleFile = { readonly name: string; readonly bytes: Uint8Array };

export type SurveyTruthRow = {
  readonly note: string;
  readonly midi: number;
  readonly onsetS: number;
  readonly f0Hz: number;
  readonly inharmonicityB: number;
  readonly partial1Hz: number;
  readonly cents: number;
};

export function sampleAudioFiles(): SampleFile[] {
  return [...surveyFiles(), ...Object.entries(SINGLE_NOTES).flatMap(([name, spec]) => singleNoteFiles(name, spec))];
}

/** 22.05 kHz keeps the whole compass below 6 MB. */
const SURVEY_RATE_HZ = 22050;

function surveyFiles(): SampleFile[] {
  const random = seededRandom(1885);
  const notes = notesOf(COMPASS_88).map((midi) => ({
    strings: [
      {
        midi,
        offsetCents: stretchCents(midi) + 2 * random.normal(),
        inharmonicityB: typicalB(midi) * Math.exp(0.08 * random.normal()),
        aftersound: { ratio: 0.08, slowDownFactor: 4 },
      },
    ],
    holdS: 1.3,
    peak: 0.25 + 0.2 * random.uniform(),
    hammerNoiseDb: -22,
  }));
  const survey = synthesizeSurvey({ notes, sampleRateHz: SURVEY_RATE_HZ, gapS: 0.2, noiseDbfs: -66, seed: 88 });
  const rows = survey.truth.map(({ midi, onsetS, strings }) => truthRow(midi, onsetS, strings[0]!));
  return [
    { name: 'survey-88-notes.wav', bytes: writeWave(survey.samples, SURVEY_RATE_HZ, '16-bit') },
    jsonFile('survey-88-notes.truth.json', `[\n${rows.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n]\n`),
  ];
}

/** Roughly how far tuners stretch the ends of the compass (from memory). */
function stretchCents(midi: number): number {
  return 25 * Math.max(0, (midi - 69) / 39) ** 2.5 - 15 * Math.max(0, (60 - midi) / 39) ** 2.5;
}

function truthRow(midi: number, onsetS: number, truth: StringTruth): SurveyTruthRow {
  const partial1Hz = truth.partialHz[0]!;
  return {
    note: midiToName(midi),
    midi,
    onsetS: rounded(onsetS, 5),
    f0Hz: rounded(truth.f0Hz, 6),
    inharmonicityB: Number(truth.inharmonicityB.toPrecision(6)),
    partial1Hz: rounded(partial1Hz, 6),
    cents: rounded(hzToCents(partial1Hz, midiToHz(midi, 440)), 4),
  };
}

const SINGLE_NOTES: Readonly<Record<string, NoteSpec>> = {
  'a0-one-string': {
    strings: [{ midi: 21, offsetCents: -12, aftersound: { ratio: 0.1, slowDownFactor: 3 } }],
    durationS: 5,
    sampleRateHz: 44100,
    leadS: 0.4,
    snrDb: 40,
    hammerNoiseDb: -25,
    seed: 21,
  },
  'a3-mistuned-unison': {
    strings: [
      { midi: 57, offsetCents: -3.1 },
      { midi: 57, offsetCents: 0.4 },
      { midi: 57, offsetCents: 2.6 },
    ],
    durationS: 4.5,
    sampleRateHz: 44100,
    leadS: 0.3,
    snrDb: 45,
    hammerNoiseDb: -25,
    seed: 57,
  },
  'a4-one-string': {
    strings: [{ midi: 69, offsetCents: 1.7, aftersound: { ratio: 0.1, slowDownFactor: 4 } }],
    durationS: 3,
    sampleRateHz: 44100,
    leadS: 0.3,
    snrDb: 45,
    hammerNoiseDb: -25,
    seed: 69,
  },
  'c6-false-beat': {
    strings: [
      {
        midi: 84,
        offsetCents: 5.2,
        falseBeats: [
          { partialNumber: 1, splitHz: 1.9, ratio: 0.5 },
          { partialNumber: 2, splitHz: 1.2, ratio: 0.3 },
        ],
      },
    ],
    durationS: 3,
    sampleRateHz: 44100,
    leadS: 0.3,
    snrDb: 45,
    hammerNoiseDb: -25,
    seed: 84,
  },
  'c8-one-string': {
    strings: [{ midi: 108, offsetCents: 22 }],
    durationS: 1.5,
    sampleRateHz: 44100,
    leadS: 0.3,
    snrDb: 35,
    hammerNoiseDb: -12,
    seed: 108,
  },
};

function singleNoteFiles(name: string, spec: NoteSpec): SampleFile[] {
  const { samples, truth } = synthesizeNote(spec);
  const strings = truth.strings.map((string, index) => ({
    ...truthRow(string.midi, truth.onsetS, string),
    falseBeats: spec.strings[index]?.falseBeats ?? [],
  }));
  return [
    { name: `${name}.wav`, bytes: writeWave(samples, spec.sampleRateHz, '16-bit') },
    jsonFile(`${name}.truth.json`, `[\n${strings.map((row) => `  ${JSON.stringify(row)}`).join(',\n')}\n]\n`),
  ];
}

function jsonFile(name: string, text: string): SampleFile {
  return { name, bytes: new TextEncoder().encode(text) };
}

function rounded(value: number, decimalCount: number): number {
  return Number(value.toFixed(decimalCount));
}
