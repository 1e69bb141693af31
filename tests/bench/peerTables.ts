/** Table 1c and 1d: the same takes heard by estimators made for any sound. They give one pitch, so partial 1 is compared. */
import { hzToCents } from '../../src/piano/cents.ts';
import { median, percentOf } from '../support/statistics.ts';
import { synthesizeNote } from '../support/syntheticString.ts';
import { type AccuracyTake, PLAIN_LENGTH_S, SNRS_DB } from './accuracyTakes.ts';
import { AUBIO_METHODS, aubioPitches, hasAubio, type Stretch } from './aubioPeers.ts';
import { type Bench, sized } from './bench.ts';
import { PITCHFINDER_PEERS, SHORT_TONE_MIDI } from './pitchfinderPeers.ts';
import { REGISTERS } from './randomString.ts';
import { figure, percent, type Report } from './report.ts';

/** Distance in cents from partial 1, one for each take; NaN where no pitch was given. */
type Heard = { readonly name: string; readonly errorsCents: readonly number[] };

const OWN_NAME = 'Stillpin';

export async function peerTables(bench: Bench, all: readonly AccuracyTake[]): Promise<void> {
  const { report } = bench;
  const takes = all
    .filter((take) => take.lengthS === PLAIN_LENGTH_S)
    .filter((_, index) => index % sized(bench, 1, 3) === 0);
  const own = { name: OWN_NAME, errorsCents: errorsOf(takes, (take) => take.reading?.partial1Hz ?? null) };
  const heard = [own, ...(await heardByPitchfinder(bench, takes)), ...(await heardByAubio(bench, takes))];
  report.heading(
    '1c  Other estimators on part of the takes of table 1a: error from partial 1 by register, noise 20 dB down and more',
  );
  byRegister(takes, heard, report);
  report.heading('1d  … and by noise, all registers');
  bySnr(takes, heard, report);
}

async function heardByPitchfinder({ pool }: Bench, takes: readonly AccuracyTake[]): Promise<Heard[]> {
  const pitches = await pool.run('pitchfinder', takes);
  return Object.keys(PITCHFINDER_PEERS).map((name) => ({
    name,
    errorsCents: errorsOf(takes, (_, index) => pitches[index]?.[name] ?? null),
  }));
}

async function heardByAubio({ folder, report, progress }: Bench, takes: readonly AccuracyTake[]): Promise<Heard[]> {
  if (!hasAubio()) {
    report.remark(
      '\naubio is not measured: there is no program aubiopitch on the PATH (Debian: apt-get install aubio-tools).',
    );
    return [];
  }
  const stretches = takes.map(sustainedPart);
  const heard: Heard[] = [];
  for (const method of AUBIO_METHODS) {
    progress(`aubio ${method}`);
    const pitches = await aubioPitches(stretches, method, folder);
    heard.push({ name: `aubio ${method}`, errorsCents: errorsOf(takes, (_, index) => pitches[index] ?? null) });
  }
  return heard;
}

function sustainedPart({ spec, string }: AccuracyTake): Stretch {
  const { samples, truth } = synthesizeNote(spec);
  const { sampleRateHz } = spec;
  const from = truth.onsetIndex + Math.round(0.03 * sampleRateHz);
  const lengthS = string.midi >= SHORT_TONE_MIDI ? 0.3 : 1;
  return { samples: samples.slice(from, from + Math.round(lengthS * sampleRateHz)), sampleRateHz, midi: string.midi };
}

function errorsOf(
  takes: readonly AccuracyTake[],
  hzOf: (take: AccuracyTake, index: number) => number | null,
): number[] {
  return takes.map((take, index) => {
    const hz = hzOf(take, index);
    return hz === null ? Number.NaN : Math.abs(hzToCents(hz, take.string.partialHz[0]!));
  });
}

const isNear = (errorCents: number) => errorCents <= NEAR_CENTS;
const NEAR_CENTS = 50;

function byRegister(takes: readonly AccuracyTake[], heard: readonly Heard[], report: Report): void {
  const cellOf = ({ errorsCents }: Heard, registerName: string) =>
    errorsCents.filter((_, index) => takes[index]?.register.name === registerName && takes[index]!.snrDb >= 20);
  const rows = REGISTERS.flatMap(({ name }) => {
    const own = cellOf(heard[0]!, name);
    return heard.map((peer) => {
      const cell = cellOf(peer, name);
      return [
        name,
        peer.name,
        String(cell.length),
        percent(percentOf(cell, Number.isNaN)),
        percent(percentOf(cell, isNear)),
        figure(median(cell.filter((error) => !Number.isNaN(error)))),
        figure(median(cell.filter(isNear))),
        figure(timesOurs(cell, own)),
      ];
    });
  });
  report.table(
    [
      'register',
      'estimator',
      'takes',
      'no pitch %',
      'within 50 cents %',
      'median of all, cents',
      'median of those within 50',
      'ratio to ours on the same',
    ],
    rows,
  );
  report.remark(FRAMES);
  for (const { name } of REGISTERS) {
    const own = cellOf(heard[0]!, name);
    const cells = heard.slice(1).map((peer) => cellOf(peer, name));
    const able = cells.filter((cell) => (percentOf(cell, isNear) ?? 0) >= LEAST_NEAR_PERCENT);
    const best = Math.min(...able.map((cell) => timesOurs(cell, own) ?? Number.POSITIVE_INFINITY));
    report.limit({
      what: `${name}: our median error over the best other’s`,
      measured: able.length === 0 ? undefined : 1 / best,
      unit: '',
      atMost: 1,
    });
  }
}

/** An estimator that is within 50 cents less often is no match: the notes it gets may be the easy ones. */
const LEAST_NEAR_PERCENT = 75;

/** Median error over ours on the same takes, those where it was within 50 cents. */
function timesOurs(cell: readonly number[], own: readonly number[]): number | undefined {
  const indexes = cell.flatMap((error, index) => (isNear(error) ? [index] : []));
  const theirs = median(indexes.map((index) => cell[index]!));
  const ours = median(indexes.map((index) => own[index]!));
  return theirs === undefined || ours === undefined ? undefined : theirs / ours;
}

const FRAMES =
  'Each of the others is given its best: input scaled to its liking, frames of 85 to 170 ms in the sustained part, the median of three\n' +
  '(pitchfinder) or of all that lie in the first second, 0.3 s from C6 up (aubio; buffers of 8192, 4096 and 2048 at 48 kHz).';

function bySnr(takes: readonly AccuracyTake[], heard: readonly Heard[], report: Report): void {
  const cellOf = ({ errorsCents }: Heard, snrDb: number) =>
    errorsCents.filter((_, index) => takes[index]?.snrDb === snrDb);
  report.table(
    ['estimator', ...SNRS_DB.flatMap((snrDb) => [`${snrDb} dB: within 50 %`, 'median, cents'])],
    heard.map((peer) => [
      peer.name,
      ...SNRS_DB.flatMap((snrDb) => {
        const cell = cellOf(peer, snrDb);
        return [percent(percentOf(cell, isNear)), figure(median(cell.filter(isNear)))];
      }),
    ]),
  );
  report.remark('Medians are of the answers within 50 cents.');
}
