/** The colours of the page, as they stand in tokens.css: legible in the light and the dark, and told apart without their hue. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const CSS = readFileSync(new URL('../../src/app/tokens.css', import.meta.url), 'utf8');
const block = (selector: string) => {
  const start = CSS.indexOf(`${selector} {`);
  return new Map(
    [...CSS.slice(start, CSS.indexOf('}', start)).matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(
      ([, name = '', colour = '']) => [name, colour],
    ),
  );
};
const light = block(':root');
const THEMES = { light, dark: new Map([...light, ...block(':root[data-theme="dark"]')]) };

/** Relative luminance (W3C, Web Content Accessibility Guidelines 2.2, definition). */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [lighter = 0, darker = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter + 0.05) / (darker + 0.05);
}

/** WCAG 2.2: 4.5 for text (1.4.3), 3 for signs and the frames of controls (1.4.11). */
const TEXT = 4.5;
const SIGN = 3;
const PAIRS: readonly [front: string, back: string, least: number][] = [
  ...['paper', 'paper-raised', 'paper-sunk'].flatMap((back): [string, string, number][] => [
    ['ink', back, TEXT],
    ['ink-soft', back, TEXT],
    ['accent', back, TEXT],
    ['rule-strong', back, SIGN],
    ['state-kept', back, SIGN],
    ['state-missing', back, SIGN],
  ]),
  ['fault', 'paper', TEXT],
  ['fault', 'fault-wash', TEXT],
  ['ink', 'fault-wash', TEXT],
  ['ink', 'caution-wash', TEXT],
  ['ink', 'accent-wash', TEXT],
  ['state-doubtful-text', 'paper', TEXT],
  ['state-doubtful', 'paper', SIGN],
  ['accent-ink', 'accent', TEXT],
  ['flat-3', 'even', SIGN],
  ['sharp-3', 'even', SIGN],
];

it('keeps the dark to the screen, so that paper gets the light colours', () => {
  const dark = [...CSS.matchAll(/data-theme="dark"/g)].map(({ index }) => index);
  expect(dark).toHaveLength(1);
  const medium = CSS.lastIndexOf('@media', dark[0]);
  expect(CSS.slice(medium, medium + 13)).toBe('@media screen');
});

describe.each(Object.entries(THEMES))('in the %s', (_, colours) => {
  const of = (name: string) => colours.get(name) ?? '';

  it.each(PAIRS)('%s stands out from %s by %f to one', (front, back, least) => {
    expect(contrast(of(front), of(back))).toBeGreaterThanOrEqual(least);
  });

  it('the steps from even to flat and to sharp differ in lightness, so that grey print keeps their order', () => {
    for (const side of ['flat', 'sharp']) {
      const steps = ['even', `${side}-1`, `${side}-2`, `${side}-3`].map((name) => luminance(of(name)));
      const order = [...steps].sort((a, b) => (steps[0]! > steps[3]! ? b - a : a - b));
      expect(steps).toEqual(order);
      for (let step = 1; step < steps.length; step += 1)
        expect(contrastOf(steps[step - 1]!, steps[step]!)).toBeGreaterThan(1.25);
    }
  });
});

function contrastOf(one: number, other: number): number {
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}
