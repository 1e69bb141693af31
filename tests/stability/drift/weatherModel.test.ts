import { describe, expect, it } from 'vitest';
import type { ChangeInterval, ChangeRow, PianoString } from '../../../src/stability/drift/changeRows.ts';
import { fitWeather } from '../../../src/stability/drift/weatherModel.ts';
import { seededRandom } from '../../support/seededRandom.ts';

const BASS_TOP = 40;
const NOISE_CENTS = 0.4;

/** An invented piano that answers humidity unlike the usual one: half of it in the tenor, much more of it in the top octaves. */
function trueResponse(midi: number): number {
  return midi <= BASS_TOP ? 0.2 : 0.25 + 0.7 * Math.exp(-0.5 * ((midi - 72) / 18) ** 2);
}

function invented(seed: number, humidityChangesPct: readonly number[]) {
  const random = seededRandom(seed);
  const strings: PianoString[] = Array.from({ length: 88 }, (_, i) => ({ midi: 21 + i, stringPosition: 2 }));
  const intervals: ChangeInterval[] = humidityChangesPct.map((pct, k) => ({
    fromDate: `${2015 + k}-01-01`,
    toDate: `${2015 + k}-07-01`,
    years: 0.5,
    humidityChangePct: Math.round(pct + random.normal()),
    hasBaseline: true,
    missingCount: 0,
  }));
  const changes: ChangeRow[] = humidityChangesPct.flatMap((pct, intervalIndex) => {
    const common = random.normal();
    return strings.map(({ midi }, stringIndex) => ({
      stringIndex,
      intervalIndex,
      cents: common + pct * trueResponse(midi) + NOISE_CENTS * random.normal(),
      varianceCents2: NOISE_CENTS ** 2,
      sinceAnewYears: null,
    }));
  });
  return { strings, intervals, changes };
}

describe('fitWeather', () => {
  it.each([
    { name: 'strong seasons', pct: [-15, 17, -22, 17, -21, 31] },
    { name: 'weak seasons', pct: [11, -9, 12, -7, -1, 6] },
    { name: 'seasons of one direction and small ones', pct: [7, -10, 19, -11, 10, -19] },
  ])('finds a piano that answers humidity unlike the usual one, in six half-years of $name', ({ pct }) => {
    for (const seed of [1, 2, 3]) {
      const { strings, intervals, changes } = invented(seed, pct);
      const weather = fitWeather(strings, intervals, changes, BASS_TOP);
      const scale =
        weather.seasons.reduce((sum, season, k) => sum + season * pct[k]!, 0) /
        pct.reduce((sum, own) => sum + own * own, 0);
      strings.forEach(({ midi }, i) => {
        expect(Math.abs(weather.responses[i]! * scale - trueResponse(midi))).toBeLessThan(0.12);
      });
      for (const sigma of weather.sigmas) {
        expect(sigma).toBeGreaterThan(0.6 * NOISE_CENTS);
        expect(sigma).toBeLessThan(1.7 * NOISE_CENTS);
      }
    }
  });

  it('hands what goes with the season over to the strings: the common movement that is left does not follow it', () => {
    const pct = [11, -9, 12, -7, 8, -13];
    const { strings, intervals, changes } = invented(7, pct);
    const { commonCents, seasons } = fitWeather(strings, intervals, changes, BASS_TOP);
    const along = seasons.reduce((sum, season, k) => sum + season * commonCents[k]!, 0);
    const squares = seasons.reduce((sum, season) => sum + season * season, 0);
    expect(Math.abs(along / squares)).toBeLessThan(0.08);
  });
});
