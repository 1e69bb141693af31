import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { hzToCents } from '../../src/piano/cents.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { runForJson, runStillpin, runThroughNpm, SAMPLE_AUDIO } from './runStillpin.ts';

const truthOf = (name: string) => JSON.parse(readFileSync(join(SAMPLE_AUDIO, `${name}.truth.json`), 'utf8'))[0];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillpin-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const oneNote = runForJson(['measure', 'a4-one-string.wav']);

describe('the JSON document of one note', () => {
  const { status, stderr, json } = oneNote;
  const truth = truthOf('a4-one-string');

  it('has exactly the keys that are promised, and no fewer', () => {
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(json).toMatchObject({ file: 'a4-one-string.wav', sampleRateHz: 44100, pitchStandardHz: 440, warnings: [] });
    const [reading] = json.readings;
    expect(Object.keys(reading)).toEqual(
      expect.arrayContaining([
        ...['note', 'midi', 'string', 'onsetS', 'durationS', 'partial1Hz', 'partial1HzU', 'partial1Source'],
        ...['f0Hz', 'inharmonicityB', 'inharmonicityBU', 'cents', 'centsU', 'partials', 'beating', 'quality'],
      ]),
    );
    expect(Object.keys(reading.partials[0])).toEqual(
      expect.arrayContaining(['n', 'hz', 'hzU', 'levelDb', 'promptDecayS', 'afterDecayS', 'beats']),
    );
    expect(Object.keys(reading.beating)).toEqual(
      expect.arrayContaining(['kind', 'rateHz', 'depthDb', 'partials', 'reason']),
    );
    expect(Object.keys(reading.quality)).toEqual(expect.arrayContaining(['snrDb', 'clipped', 'usable', 'reasons']));
  });

  it('says what the string did', () => {
    const [reading] = json.readings;
    expect(reading).toMatchObject({ note: 'A4', midi: 69, string: 0 });
    // 0.3 cents is the accuracy claimed for the middle of the compass; the strike is found within a few periods.
    expect(Math.abs(hzToCents(reading.partial1Hz, truth.partial1Hz))).toBeLessThan(0.3);
    expect(Math.abs(reading.cents - truth.cents)).toBeLessThan(0.3);
    expect(Math.abs(reading.onsetS - truth.onsetS)).toBeLessThan(0.02);
    expect(Math.abs(reading.inharmonicityB / truth.inharmonicityB - 1)).toBeLessThan(0.02);
    expect(reading.quality).toMatchObject({ clipped: false, usable: true });
  });
});

it('finds a false beat where there is one', () => {
  const [reading] = runForJson(['measure', 'c6-false-beat.wav', '--string', '2']).json.readings;
  expect(reading).toMatchObject({ note: 'C6', string: 2, beating: { kind: 'false beat' } });
  const [beat] = reading.partials[0].beats;
  expect(Object.keys(beat)).toEqual(expect.arrayContaining(['rateHz', 'rateHzU', 'depthDb']));
  expect(Math.abs(beat.rateHz - 1.9)).toBeLessThan(0.05);
});

it('takes relative names from where the user stands, though npm works from the project', () => {
  writeFileSync(join(folder, 'here.wav'), readFileSync(join(SAMPLE_AUDIO, 'c8-one-string.wav')));
  const { status, stdout } = runThroughNpm(['measure', 'here.wav', '--json'], folder);
  expect(status).toBe(0);
  expect(JSON.parse(stdout)).toMatchObject({ file: 'here.wav', readings: [{ note: 'C8' }] });
});

it('finds the notes at both ends of the compass', () => {
  const { json } = runForJson(['measure', 'a0-one-string.wav', 'c8-one-string.wav', 'a3-mistuned-unison.wav']);
  expect(json.map((document: { readings: { note: string }[] }) => document.readings[0]?.note)).toEqual([
    'A0',
    'C8',
    'A3',
  ]);
});

it('counts cents from the pitch standard that it is given', () => {
  const at440 = oneNote.json;
  const at442 = runForJson(['measure', 'a4-one-string.wav', '--pitch', '442']).json;
  expect(at442.pitchStandardHz).toBe(442);
  expect(at440.readings[0].cents - at442.readings[0].cents).toBeCloseTo(hzToCents(442, 440), 3);
});

describe('a string 60 cents flat', () => {
  const measureFlat = (...options: string[]) => {
    const { samples } = synthesizeNote({
      strings: [{ midi: 69, offsetCents: -60 }],
      durationS: 3,
      sampleRateHz: 48000,
      snrDb: 40,
      seed: 60,
    });
    writeFileSync(join(folder, 'flat.wav'), writeWave(samples, 48000, 'float'));
    return runForJson(['measure', 'flat.wav', ...options], folder).json;
  };

  it('is the nearest note where nobody says which', () => {
    const [reading] = measureFlat().readings;
    expect(reading.note).toBe('G#4');
    expect(Math.abs(reading.cents - 40)).toBeLessThan(0.3);
  });

  it('is the note that is given', () => {
    const [reading] = measureFlat('--note', 'A4').readings;
    expect(reading.note).toBe('A4');
    expect(Math.abs(reading.cents + 60)).toBeLessThan(0.3);
  });
});

it('reads the encoded forms of a recording alike', () => {
  const names = ['wav', 'flac', 'ogg', 'mp3'].map((ending) => `a4-one-string.${ending}`);
  const { json } = runForJson(['measure', ...names]);
  expect(json.map((document: { file: string }) => document.file)).toEqual(names);
  const hz = json.map((document: { readings: { partial1Hz: number }[] }) => document.readings[0]?.partial1Hz);
  for (const one of hz) expect(Math.abs(hzToCents(one, hz[0]))).toBeLessThan(0.1);
});

it('prints a table for people, with the note, its cents and its partials', () => {
  const { status, stdout, stderr } = runStillpin(['measure', 'a4-one-string.wav']);
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const [head, row] = stdout.split('\n');
  expect(head).toMatch(/note .*partial 1 .*cents .*B .*beating .*quality/);
  expect(row).toMatch(/A4 .*440\.43.* Hz .*\+1\.7\d* .*× 10⁻⁴ .*usable/);
  expect(stdout).toMatch(/partial +frequency +level/);
});

describe('with several files, one of which cannot be read', () => {
  const names = ['c8-one-string.wav', 'missing.wav', 'a4-one-string.wav'];

  it('measures the others, warns in its document and ends with status 2', () => {
    const { status, stderr, json } = runForJson(['measure', ...names]);
    expect(status).toBe(2);
    expect(json.map((document: { file: string }) => document.file)).toEqual(names);
    expect(json.map((document: { readings: unknown[] }) => document.readings.length)).toEqual([1, 0, 1]);
    expect(json[1]).toMatchObject({ sampleRateHz: null, readings: [] });
    expect(json[1].warnings).toEqual([expect.stringMatching(/missing\.wav.*no such file/)]);
    expect(stderr).toMatch(/^stillpin: cannot read missing\.wav: .*\n$/);
  });

  it('shows the fault in the table too', () => {
    const { stdout, status } = runStillpin(['measure', ...names]);
    expect(status).toBe(2);
    expect(stdout).toMatch(/missing\.wav .*no such file/);
    expect(stdout).toMatch(/c8-one-string\.wav .*C8/);
  });
});

describe('a recording', () => {
  it('of silence gives no readings, the reason, and status 0', () => {
    writeFileSync(join(folder, 'silence.wav'), writeWave(new Float32Array(48000), 48000, '16-bit'));
    const { status, stderr, json } = runForJson(['measure', 'silence.wav'], folder);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(json.readings).toEqual([]);
    expect(json.warnings).toEqual([expect.stringMatching(/no note was found \(silence/)]);
    const table = runStillpin(['measure', 'silence.wav'], folder);
    expect(table.status).toBe(0);
    expect(table.stdout).toMatch(/no note was found/);
  });

  it('cut short is measured as far as it goes, with a warning', () => {
    const whole = readFileSync(join(SAMPLE_AUDIO, 'a4-one-string.wav'));
    writeFileSync(join(folder, 'cut.wav'), whole.subarray(0, 150_000));
    const { status, json } = runForJson(['measure', 'cut.wav'], folder);
    expect(status).toBe(0);
    expect(json.readings).toHaveLength(1);
    expect(json.warnings).toEqual([expect.stringMatching(/cut short/)]);
  });

  it('under another name is recognised all the same', () => {
    writeFileSync(join(folder, 'note.txt'), readFileSync(join(SAMPLE_AUDIO, 'a4-one-string.flac')));
    expect(runForJson(['measure', 'note.txt'], folder).json.readings[0].note).toBe('A4');
  });

  it('with several notes gives the strongest one and points to survey', () => {
    const { json } = runForJson(['measure', 'two.wav'], twoNotes());
    expect(json.readings.map((reading: { note: string }) => reading.note)).toEqual(['A4']);
    expect(json.warnings).toEqual([expect.stringMatching(/2 strikes .*survey/)]);
  });

  function twoNotes(): string {
    const [weak, strong] = ['c8-one-string.wav', 'a4-one-string.wav'].map((name) =>
      readFileSync(join(SAMPLE_AUDIO, name)).subarray(44),
    );
    const samples = Buffer.concat([weak!, strong!]);
    const head = Buffer.from(readFileSync(join(SAMPLE_AUDIO, 'a4-one-string.wav')).subarray(0, 44));
    head.writeUInt32LE(samples.length, 40);
    writeFileSync(join(folder, 'two.wav'), Buffer.concat([head, samples]));
    return folder;
  }
});
