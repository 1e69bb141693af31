/** Table 8c and 8d: processor time for single takes. What other programs do at the same time matters little for it. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { measureTake } from '../../src/analysis/tone/measureTake.ts';
import { joinBlocks } from '../../src/files/audio/audioStream.ts';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { median } from '../support/statistics.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { SAMPLE_RATE_HZ, takeSpec } from './accuracyTakes.ts';
import { hasAubio } from './aubioPeers.ts';
import { type Bench, sized } from './bench.ts';
import { PITCHFINDER_PEERS } from './pitchfinderPeers.ts';
import { REGISTERS, type Register, spreadNotes } from './randomString.ts';
import { figure } from './report.ts';

const TAKE_S = 5;

type RegisterSounds = { readonly register: Register; readonly sounds: readonly Float32Array[] };

/** To be called while the bench's threads are at rest: they would be counted too. */
export function noteSpeedTables(bench: Bench): void {
  const count = sized(bench, 3, 8);
  const registers = REGISTERS.map((register) => ({ register, sounds: takesOf(register, count) }));
  const ownMsPerS = perNoteTable(bench, registers);
  peerSpeedTable(
    bench,
    registers.flatMap(({ sounds }) => sounds[0] ?? []),
    ownMsPerS,
  );
}

function takesOf(register: Register, count: number): Float32Array[] {
  return spreadNotes(register, count, 1).map((midi) => {
    const spec = takeSpec(midi, 810_000 + midi, { snrDb: 40, lengthS: TAKE_S });
    return synthesizeNote(spec).samples;
  });
}

/** @returns ms of processor time for one second of sound */
function perNoteTable({ report, progress }: Bench, registers: readonly RegisterSounds[]): number {
  const rows = registers.map(({ register, sounds }) => {
    progress(`measureTake, ${register.name}`);
    const measure = (samples: Float32Array) =>
      measureTake(samples, SAMPLE_RATE_HZ, { pitchStandardHz: 440, stringPosition: 1 });
    measure(sounds[0]!); // the first runs before the code has been compiled
    return { name: register.name, times: sounds.map((samples) => processorMs(() => measure(samples))) };
  });
  report.heading(`8c  measureTake, takes of ${TAKE_S} s at 48 kHz: processor time`);
  report.table(
    ['register', 'takes', 'median ms', 'largest ms', 'median ms per s of sound'],
    rows.map(({ name, times }) => {
      const middle = median(times);
      return [
        name,
        String(times.length),
        figure(middle),
        figure(Math.max(...times)),
        figure(middle === undefined ? undefined : middle / TAKE_S),
      ];
    }),
  );
  for (const { name, times } of rows)
    report.limit({
      what: `measureTake, ${name}, median processor time for ${TAKE_S} s`,
      measured: median(times),
      unit: 'ms',
      atMost: 1000,
    });
  const all = rows.flatMap(({ times }) => times);
  return all.reduce((sum, time) => sum + time, 0) / all.length / TAKE_S;
}

function processorMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function peerSpeedTable({ report, progress, folder }: Bench, sounds: readonly Float32Array[], ownMsPerS: number): void {
  const soundS = sounds.reduce((sum, samples) => sum + samples.length, 0) / SAMPLE_RATE_HZ;
  const rows: [name: string, gives: string, msPerS: number][] = [
    ['Stillpin measureTake', 'partials, B, decay, beats', ownMsPerS],
  ];
  for (const name of ['pitchfinder YIN', 'pitchfinder ACF2PLUS']) {
    progress(name);
    rows.push([name, 'one pitch every 85 ms', pitchfinderMs(name, sounds) / soundS]);
  }
  if (hasAubio()) {
    const file = join(folder, 'takes.wav');
    writeFileSync(file, writeWave(joinBlocks(sounds), SAMPLE_RATE_HZ, '16-bit'));
    for (const method of ['yinfft', 'yinfast', 'mcomb'])
      rows.push([`aubio ${method} (elapsed)`, 'one pitch every 5 ms', aubioMs(file, method) / soundS]);
  } else report.remark('aubio is not measured: there is no program aubiopitch on the PATH.');
  report.heading('8d  Other estimators on one of these takes from each register');
  report.table(
    ['estimator', 'gives', 'ms per s of sound', 'ratio to ours'],
    rows.map(([name, gives, msPerS]) => [name, gives, figure(msPerS), figure(msPerS / ownMsPerS)]),
  );
}

function pitchfinderMs(name: string, sounds: readonly Float32Array[]): number {
  const peer = PITCHFINDER_PEERS[name]!;
  const estimate = peer.estimator(SAMPLE_RATE_HZ);
  return processorMs(() => {
    for (const samples of sounds)
      for (let start = 0; start + PEER_FRAME <= samples.length; start += PEER_FRAME)
        estimate(samples.subarray(start, start + PEER_FRAME).map((value) => value * peer.peak));
  });
}

const PEER_FRAME = 4097;

function aubioMs(file: string, method: string): number {
  const startedAt = performance.now();
  spawnSync('aubiopitch', ['-i', file, '-p', method], { maxBuffer: 2 ** 28 });
  return performance.now() - startedAt;
}
