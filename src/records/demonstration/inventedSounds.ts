/**
 * A few sounds for the invented workshop, so that a note can be heard then and now: what the readings say their partials did, and the quiet of
 * a room. Every partial is its damped sinusoids with an aftersound; no instrument was recorded.
 */
import { encodeTakeSound } from '../../files/audio/takeSound.ts';
import type { Survey, Take, TakeSound } from '../../piano/instrument.ts';
import type { PartialReading } from '../../piano/reading.ts';
import type { RecordSet } from '../recordSet.ts';
import { type SeededNumbers, seededNumbers } from './seededNumbers.ts';

const SAMPLE_RATE_HZ = 44_100;
const LEAD_S = 0.1;
const SOUND_S = 2.6;
/** The string's rise after the blow. Chosen: a few milliseconds, as in the middle of a piano. */
const RISE_S = 0.004;
/** A quiet room. */
const ROOM_DBFS = -78;
/** The slow part of a partial begins this much below the prompt one (common practice: 15 to 25 dB). */
const AFTERSOUND_DB = -18;
/** Notes with sound: one that beats by itself, where there is one about here, and A4. */
const LOWEST_BEATING_MIDI = 64;
const A4_MIDI = 69;

/**
 * Of two strings at the first as-left and the last as-found survey, and of the first string that something was tried on, before and after.
 * The same set gives the same sounds.
 */
export function* inventedSounds(set: Pick<RecordSet, 'surveys' | 'takes' | 'trials'>): Generator<TakeSound> {
  const bench = new Set(set.surveys.filter(({ strings }) => strings === 'single strings').map(({ id }) => id));
  const surveys = set.surveys.filter(({ id }) => !bench.has(id));
  const takes = set.takes.filter(({ surveyId }) => !bench.has(surveyId));
  const numbers = seededNumbers(takes.length);
  const chosen = [surveys.find(isAsLeft), surveys.findLast(({ stage }) => stage === 'as-found')];
  const ofSurveys = chosen.flatMap((survey) => takes.filter(({ surveyId }) => surveyId === survey?.id));
  const beating = ofSurveys.find(
    ({ midi, reading }) => midi >= LOWEST_BEATING_MIDI && reading.beating.kind === 'false beat',
  );
  const midis = [A4_MIDI, ...(beating ? [beating.midi] : [])];
  for (const take of ofSurveys) if (midis.includes(take.midi)) yield inventedSound(take, numbers);
  const [trial] = set.trials;
  const tried = [trial?.takesBefore[0], trial?.takesAfter[0]];
  for (const take of set.takes) if (tried.includes(take.id)) yield inventedSound(take, numbers);
}

function isAsLeft({ stage }: Survey): boolean {
  return stage === 'as-left';
}

function inventedSound(take: Take, numbers: SeededNumbers): TakeSound {
  const onsetIndex = Math.round(LEAD_S * SAMPLE_RATE_HZ);
  const samples = new Float32Array(onsetIndex + Math.round(SOUND_S * SAMPLE_RATE_HZ));
  for (const partial of take.reading.partials) addPartial(samples, onsetIndex, partial, numbers);
  const room = 10 ** (ROOM_DBFS / 20);
  for (let index = 0; index < samples.length; index += 1) samples[index] = (samples[index] ?? 0) + numbers.normal(room);
  return {
    id: take.id,
    surveyId: take.surveyId,
    instrumentId: take.instrumentId,
    sampleRateHz: SAMPLE_RATE_HZ,
    onsetIndex,
    startS: take.reading.onsetS - LEAD_S,
    durationS: samples.length / SAMPLE_RATE_HZ,
    takeDurationS: samples.length / SAMPLE_RATE_HZ,
    encoding: 'flac',
    bytes: encodeTakeSound(samples, SAMPLE_RATE_HZ),
  };
}

function addPartial(samples: Float32Array, onsetIndex: number, partial: PartialReading, numbers: SeededNumbers): void {
  for (const { frequencyHz, levelDbfs, decayTimeS } of partial.components) {
    const phase = numbers.between(0, 2 * Math.PI);
    addSinusoid(samples, onsetIndex, { frequencyHz, levelDbfs, decayTimeS, phase });
    const { afterDecayTimeS } = partial;
    if (afterDecayTimeS !== null)
      addSinusoid(samples, onsetIndex, {
        frequencyHz,
        levelDbfs: levelDbfs + AFTERSOUND_DB,
        decayTimeS: afterDecayTimeS,
        phase,
      });
  }
}

type Sinusoid = {
  readonly frequencyHz: number;
  readonly levelDbfs: number;
  /** For 60 dB. */
  readonly decayTimeS: number;
  readonly phase: number;
};

function addSinusoid(samples: Float32Array, onsetIndex: number, sinusoid: Sinusoid): void {
  const { frequencyHz, levelDbfs, decayTimeS, phase } = sinusoid;
  if (frequencyHz >= SAMPLE_RATE_HZ / 2) return;
  const size = 10 ** (levelDbfs / 20);
  const step = (2 * Math.PI * frequencyHz) / SAMPLE_RATE_HZ;
  const fading = Math.log(1000) / (decayTimeS * SAMPLE_RATE_HZ);
  for (let index = onsetIndex; index < samples.length; index += 1) {
    const since = index - onsetIndex;
    const rise = Math.min(1, since / (RISE_S * SAMPLE_RATE_HZ));
    samples[index] = (samples[index] ?? 0) + rise * size * Math.exp(-fading * since) * Math.sin(step * since + phase);
  }
}
