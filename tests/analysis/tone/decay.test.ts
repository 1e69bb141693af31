import { describe, expect, it } from 'vitest';
import {
  decayTimeS,
  decayTimesOf,
  lifeTimeS,
  partialEnergy,
  typicalLifeTimeS,
} from '../../../src/analysis/tone/decay.ts';
import { component, partialOf } from '../partialFits.ts';

/** e^(−αt) falls by 20·log10(e) = 8.686 dB for each 1/α. */
const dampingOf = (dbPerS: number) => dbPerS / (20 * Math.LOG10E);

it('decayTimeS is 7.5 s for the prompt sound of 8 dB a second that G. Weinreich shows (Five lectures, 1990)', () => {
  expect(dampingOf(8)).toBeCloseTo(0.921, 3);
  expect(decayTimeS({ dampingPerS: dampingOf(8) })).toBeCloseTo(7.5, 3);
});

it.each([0, -1])('decayTimeS has a longest time for what does not decay: %s per second', (dampingPerS) => {
  expect(decayTimeS({ dampingPerS })).toBe(120);
});

describe('decayTimesOf', () => {
  it('gives one decay no aftersound', () => {
    const times = decayTimesOf(partialOf(1, [{ hz: 440, amplitude: 0.1, dampingPerS: dampingOf(20) }]));
    expect(times.promptDecayTimeS).toBeCloseTo(3, 9);
    expect(times.afterDecayTimeS).toBeNull();
  });

  it.each([0, 1])('tells prompt sound from aftersound in whatever order they come (%s)', (order) => {
    const parts = [
      { hz: 440, amplitude: 0.1, dampingPerS: dampingOf(30) },
      { hz: 440.01, amplitude: 0.012, dampingPerS: dampingOf(6) },
    ];
    const times = decayTimesOf(partialOf(1, order === 0 ? parts : [...parts].reverse()));
    expect(times.promptDecayTimeS).toBeCloseTo(2, 9);
    expect(times.afterDecayTimeS).toBeCloseTo(10, 9);
  });

  it('calls two like decays one: a beat is not an aftersound', () => {
    const times = decayTimesOf(
      partialOf(1, [
        { hz: 440, amplitude: 0.1, dampingPerS: 2 },
        { hz: 441, amplitude: 0.09, dampingPerS: 1.7 },
      ]),
    );
    expect(times.afterDecayTimeS).toBeNull();
    expect(times.promptDecayTimeS!).toBeGreaterThan(Math.log(1000) / 2);
    expect(times.promptDecayTimeS!).toBeLessThan(Math.log(1000) / 1.7);
  });

  it('leaves out an aftersound 50 dB down', () => {
    const times = decayTimesOf(
      partialOf(1, [
        { hz: 440, amplitude: 0.1, dampingPerS: 4 },
        { hz: 440, amplitude: 0.1 * 10 ** (-50 / 20), dampingPerS: 0.5 },
      ]),
    );
    expect(times.afterDecayTimeS).toBeNull();
  });

  it('says nothing of what does not decay', () => {
    const times = decayTimesOf(partialOf(1, [{ hz: 440, amplitude: 0.1, dampingPerS: 0 }]));
    expect(times).toEqual({ promptDecayTimeS: null, afterDecayTimeS: null });
  });
});

describe('lifeTimeS', () => {
  it('is the decay time of a single decay, whatever its level', () => {
    for (const amplitude of [1, 1e-3]) {
      expect(lifeTimeS([partialOf(1, [{ hz: 440, amplitude, dampingPerS: dampingOf(15) }])])).toBeCloseTo(4, 6);
    }
  });

  it('is twice the time in which all partials together lose 30 dB', () => {
    const parts = [
      { hz: 440, amplitude: 0.2, dampingPerS: 3 },
      { hz: 440, amplitude: 0.01, dampingPerS: 0.6 },
      { hz: 880, amplitude: 0.3, dampingPerS: 5 },
    ];
    const lifeS = lifeTimeS([partialOf(1, parts.slice(0, 2)), partialOf(2, parts.slice(2))])!;
    const energy = (timeS: number) =>
      parts.reduce((sum, part) => sum + (part.amplitude * Math.exp(-part.dampingPerS * timeS)) ** 2, 0);
    expect(10 * Math.log10(energy(lifeS / 2) / energy(0))).toBeCloseTo(-30, 4);
  });

  it('is not known where nothing decays', () => {
    expect(lifeTimeS([])).toBeNull();
    expect(lifeTimeS([partialOf(1, [{ hz: 440, amplitude: 0.1, dampingPerS: 0 }])])).toBeNull();
  });
});

it('partialEnergy is the area under the squared envelope of the first second', () => {
  const parts = [
    { hz: 440, amplitude: 0.2, dampingPerS: 3 },
    { hz: 441, amplitude: 0.1, dampingPerS: 0.2 },
  ].map(component);
  let area = 0;
  for (let i = 0; i < 1e4; i++) {
    for (const part of parts) area += (part.amplitude * Math.exp((-part.dampingPerS * (i + 0.5)) / 1e4)) ** 2 / 1e4;
  }
  expect(partialEnergy(partialOf(1, parts))).toBeCloseTo(area, 8);
});

it('typicalLifeTimeS falls along the whole compass, without jumps', () => {
  const lives = Array.from({ length: 88 }, (_, i) => typicalLifeTimeS(21 + i));
  for (let i = 1; i < 88; i++) {
    expect(lives[i]!).toBeLessThan(lives[i - 1]!);
    expect(lives[i]! / lives[i - 1]!).toBeGreaterThan(0.9);
  }
  expect(typicalLifeTimeS(12)).toBe(typicalLifeTimeS(21));
  expect(typicalLifeTimeS(120)).toBe(typicalLifeTimeS(108));
});
