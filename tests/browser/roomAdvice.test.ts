import { expect, it } from 'vitest';
import { writeWave } from '../../src/files/audio/writeWave.ts';
import { texts } from '../../src/ui/texts.ts';
import { addHum, noiseSource } from '../support/roomNoise.ts';
import { seededRandom } from '../support/seededRandom.ts';
import { accessibilityFaults } from './support/accessibilityFaults.ts';
import { hookMicrophone } from './support/microphoneHook.ts';
import { openApp } from './support/openApp.ts';
import { openBrowser } from './support/openBrowser.ts';
import { beginSurvey } from './support/recordSurvey.ts';

const RATE_HZ = 44100;

/** Ten seconds of a room with white noise at −47 dBFS and hum of 60 Hz at −40 dBFS. */
function humOfARoom(): Buffer {
  const random = seededRandom(60);
  const noise = noiseSource(random, false);
  const rms = 10 ** (-47 / 20) / Math.SQRT2;
  const samples = Float64Array.from({ length: 10 * RATE_HZ }, () => rms * noise());
  addHum(samples, RATE_HZ, { hz: 60, levelDb: -40 }, random);
  return Buffer.from(writeWave(Float32Array.from(samples), RATE_HZ, 'float'));
}

it('tells hum, noise and what drowns in it before the first note', async () => {
  const browser = await openBrowser({ kind: 'none' });
  try {
    const context = await browser.newContext();
    await hookMicrophone(context, humOfARoom());
    const { page, complaints } = await openApp(context);
    await beginSurvey(page);
    const panel = page.getByRole('region', { name: texts.room.title });
    await panel.getByText(texts.room.listening).waitFor();
    await panel.getByText('The mains hums at 60 Hz (−39 dB).').waitFor();
    // Both together: 10·log10(10^−4.7 + 10^−3.88) = −38.3 dB.
    await panel.getByText('The room is loud (−38 dB).').waitFor();
    // Of the noise 6 of 22.05 kHz, −5.7 dB, lie from 2 to 8 kHz: −53 dB.
    await panel.getByText(texts.room.treble('D♯7').sentence).waitFor();
    await panel.getByText(texts.room.strikeOnce).waitFor();
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
  } finally {
    await browser.close();
  }
});
