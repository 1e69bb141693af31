/** Two sounds of a string, ready to be heard, seen and saved. */
import { partialEnvelope } from '../../analysis/signal/partialEnvelope.ts';
import { writeWave } from '../../files/audio/writeWave.ts';
import { dataUri } from '../../files/dataUri.ts';
import { formatBeatRate, formatDate, formatNumber } from '../../piano/format.ts';
import { figureLanguage } from '../../piano/formatLanguage.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { type BeatPictureWords, outlineOf, type PicturedSound } from '../../report/beatPicture.ts';
import { type HearingPage, hearingFile } from '../../report/hearingPage.ts';
import { stringName } from '../../report/stringWords.ts';
import { reportWordsIn } from '../../report/wordsIn.ts';
import type { SharedPartial } from './beatPartial.ts';
import type { LeveledSound } from './equalLoudness.ts';
import type { HearableSound } from './hearableNotes.ts';

const reportWords = reportWordsIn(figureLanguage());
const words = reportWords.hearing;

/** Points of the outline: about one for each two dots of a screen. */
const OUTLINE_POINTS = 330;

export function soundName({ survey, visit }: HearableSound): string {
  return words.sound(formatDate(visit.visitedOn, reportWords.language), words.stages[survey.stage]);
}

export function picturedSound(
  heard: HearableSound,
  sound: LeveledSound,
  { partialNumber, readings }: SharedPartial,
  index: 0 | 1,
): PicturedSound {
  const partial = readings[index];
  const spacingHz = heard.take.reading.f0Hz ?? heard.take.reading.partial1Hz;
  const [beat] = partial.beats;
  return {
    title: soundName(heard),
    beats: beat
      ? words.beat(formatBeatRate(beat.rateHz), `${formatNumber(beat.depthDb, 0)} dB`)
      : words.noBeat(partialNumber),
    durationS: sound.samples.length / sound.sampleRateHz,
    envelope: partialEnvelope(sound, { centreHz: partial.frequencyHz, spacingHz }),
    outline: outlineOf(sound.samples, OUTLINE_POINTS),
  };
}

export function pictureWords(names: readonly [string, string], partialNumber: number): BeatPictureWords {
  return {
    seconds: words.seconds,
    decibels: words.decibels,
    summary: words.summary(...names, partialNumber),
  };
}

/** The file to give away: sounds of 16 bits, as every program reads them. */
export function comparisonFile(
  instrument: Instrument,
  heard: readonly [HearableSound, HearableSound],
  sounds: readonly [LeveledSound, LeveledSound],
  pictured: readonly [PicturedSound, PicturedSound],
  partialNumber: number,
): string {
  const page: HearingPage = {
    title: words.title(stringName(heard[0].take, reportWords), instrument.name),
    subtitle: words.subtitle,
    demonstration: instrument.isDemonstration ? reportWords.demonstration : null,
    sounds: pictured.map((picture, index) => ({ ...picture, dataUri: waveUri(sounds[index]) })),
    picture: pictureWords([pictured[0].title, pictured[1].title], partialNumber),
    sentences: [words.partial(partialNumber), words.loudness],
  };
  return hearingFile(page, reportWords);
}

function waveUri(sound: LeveledSound | undefined): string {
  return sound ? dataUri('audio/wav', writeWave(sound.samples, sound.sampleRateHz, '16-bit')) : '';
}
