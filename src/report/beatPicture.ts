/**
 * A sound as a picture: above, how loud one partial is from moment to moment, where beats show as waves; below, the whole sound's outline. Two of
 * them stand under one another on one time axis, so that they can be compared by eye while they are heard.
 */
import { formatNumber } from '../piano/format.ts';
import { element, type PageElement } from './pageTree.ts';
import { roundTicks } from './roundTicks.ts';
import { INK, line, type Point, px, RULE, SOFT, text } from './svgParts.ts';

export type EnvelopePoint = { readonly timeS: number; readonly levelDb: number };

export type PicturedSound = {
  readonly title: string;
  /** What was measured of its beats, in words. */
  readonly beats: string;
  readonly durationS: number;
  /** In dB below its loudest moment. */
  readonly envelope: readonly EnvelopePoint[];
  /** Lowest and highest sample of equal stretches of time. */
  readonly outline: readonly { readonly low: number; readonly high: number }[];
};

export type BeatPictureWords = {
  readonly seconds: string;
  readonly decibels: string;
  readonly summary: string;
};

const PICTURE_WIDTH = 720;
const LEFT = 46;
const RIGHT = 708;
const PANEL_HEIGHT = 172;
const ENVELOPE = { top: 26, height: 84 };
const OUTLINE = { top: 116, height: 36 };
const AXIS_HEIGHT = 34;
const DEEPEST_DB = -40;
const ENVELOPE_COLOUR = '#145069';
const OUTLINE_COLOUR = '#8b979c';

function pictureHeight(soundCount: number): number {
  return soundCount * PANEL_HEIGHT + AXIS_HEIGHT;
}

/** Where the play position of one of the sounds stands: shares of the picture's width and height. */
export function positionInPicture(sounds: readonly PicturedSound[], index: number, timeS: number) {
  const height = pictureHeight(sounds.length);
  return {
    x: (LEFT + ((RIGHT - LEFT) * timeS) / longestS(sounds)) / PICTURE_WIDTH,
    top: (index * PANEL_HEIGHT + ENVELOPE.top) / height,
    height: (OUTLINE.top + OUTLINE.height - ENVELOPE.top) / height,
  };
}

/** @param sounds at least one, with a length above zero */
export function beatPicture(sounds: readonly PicturedSound[], words: BeatPictureWords): PageElement {
  const height = pictureHeight(sounds.length);
  const longest = longestS(sounds);
  const x = (timeS: number) => LEFT + ((RIGHT - LEFT) * timeS) / longest;
  return element(
    'svg',
    { ...SVG, viewBox: `0 0 ${PICTURE_WIDTH} ${height}`, 'aria-label': words.summary },
    timeAxis(longest, x, height, words),
    sounds.map((sound, index) => panel(sound, index * PANEL_HEIGHT, x, words)),
  );
}

const SVG = {
  xmlns: 'http://www.w3.org/2000/svg',
  class: 'beats',
  role: 'img',
  'font-family': 'inherit',
  'font-size': 11,
  fill: INK,
};

function longestS(sounds: readonly PicturedSound[]): number {
  return Math.max(...sounds.map(({ durationS }) => durationS));
}

function timeAxis(longest: number, x: (timeS: number) => number, height: number, words: BeatPictureWords) {
  const ticks = roundTicks([0, longest], 9).values.filter((value) => value <= longest + 1e-9);
  const bottom = height - AXIS_HEIGHT;
  return [
    ticks.map((value) => [
      line(
        [
          { x: x(value), y: ENVELOPE.top },
          { x: x(value), y: bottom + 4 },
        ],
        { stroke: RULE },
      ),
      text({ x: x(value), y: bottom + 16 }, formatNumber(value, Number.isInteger(value) ? 0 : 1), {
        'text-anchor': 'middle',
      }),
    ]),
    text({ x: RIGHT, y: bottom + 30 }, words.seconds, { 'text-anchor': 'end', fill: SOFT }),
  ];
}

function panel(sound: PicturedSound, top: number, x: (timeS: number) => number, words: BeatPictureWords) {
  const y = (levelDb: number) => top + ENVELOPE.top + (ENVELOPE.height * Math.max(levelDb, DEEPEST_DB)) / DEEPEST_DB;
  const points = sound.envelope.map(({ timeS, levelDb }): Point => ({ x: x(timeS), y: y(levelDb) }));
  return [
    text({ x: LEFT, y: top + 15 }, sound.title, { 'font-weight': 600 }),
    text({ x: RIGHT, y: top + 15 }, sound.beats, { 'text-anchor': 'end' }),
    [0, -20, -40].map((levelDb) => [
      line(
        [
          { x: LEFT, y: y(levelDb) },
          { x: RIGHT, y: y(levelDb) },
        ],
        { stroke: RULE },
      ),
      text({ x: LEFT - 6, y: y(levelDb) + 4 }, formatNumber(levelDb, 0), { 'text-anchor': 'end' }),
    ]),
    text({ x: 6, y: top + ENVELOPE.top - 8 }, words.decibels, { fill: SOFT }),
    points.length > 1 && line(points, { stroke: ENVELOPE_COLOUR, 'stroke-width': 1.8, 'stroke-linejoin': 'round' }),
    outline(sound, top, x),
  ];
}

function outline({ outline: stretches, durationS }: PicturedSound, top: number, x: (timeS: number) => number) {
  if (stretches.length < 2) return null;
  const middle = top + OUTLINE.top + OUTLINE.height / 2;
  const peak = stretches.reduce((most, { low, high }) => Math.max(most, -low, high), 1e-9);
  const at = (index: number) => px(x((durationS * (index + 0.5)) / stretches.length));
  const y = (value: number) => px(middle - (value / peak) * (OUTLINE.height / 2));
  const upper = stretches.map(({ high }, index) => `${at(index)} ${y(high)}`);
  const lower = stretches.map(({ low }, index) => `${at(index)} ${y(low)}`).reverse();
  return element('path', { d: `M${[...upper, ...lower].join('L')}Z`, fill: OUTLINE_COLOUR });
}

/** Lowest and highest sample of so many equal stretches. */
export function outlineOf(samples: Float32Array, stretchCount: number): { low: number; high: number }[] {
  const count = Math.min(stretchCount, samples.length);
  return Array.from({ length: count }, (_, index) => {
    const part = samples.subarray(
      Math.floor((index * samples.length) / count),
      Math.floor(((index + 1) * samples.length) / count),
    );
    return {
      low: part.reduce((low, sample) => Math.min(low, sample), 0),
      high: part.reduce((high, sample) => Math.max(high, sample), 0),
    };
  });
}
