import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sampleAudioFiles } from './sampleAudio.ts';

describe.each(sampleAudioFiles())('sample-audio/$name', ({ name, bytes }) => {
  it('is what the script makes', () => {
    const stored = new Uint8Array(readFileSync(new URL(`../../sample-audio/${name}`, import.meta.url)));
    expect(stored.length).toBe(bytes.length);
    const differing = stored.reduce((count, byte, index) => count + (byte === bytes[index] ? 0 : 1), 0);
    // Bit for bit with the JavaScript engine it was made with; another may round a sine or a logarithm the other way, which
    // flips a least significant bit here and there.
    expect(differing / stored.length).toBeLessThan(1e-4);
  });
});
