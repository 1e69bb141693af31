import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { AudioFaultReason } from '../../../src/files/audio/audioStream.ts';
import { bytesOf, chunk, extensibleBody, formatBody, riff, u16, u32 } from '../../support/handWrittenBytes.ts';
import { seededRandom } from '../../support/seededRandom.ts';
import { faultOf, readSound } from './readSound.ts';

const FORMAT = chunk('fmt ', formatBody());
const DATA = chunk('data', [0x00, 0x40, 0x00, 0xc0]);
const format = (claims: Parameters<typeof formatBody>[0]) => riff(chunk('fmt ', formatBody(claims)), DATA);
const oggPage = (packet: Uint8Array) =>
  bytesOf('OggS', [0, 2], Array(8).fill(0), u32(1), u32(0), u32(0), [1, packet.length], packet);
const flacInfo = (rateHz: number, bitCount: number) => [
  ...[0x80, 0, 0, 34],
  ...[0x10, 0, 0x10, 0, 0, 0, 0, 0, 0, 0],
  ...[rateHz >> 12, (rateHz >> 4) & 0xff, ((rateHz & 15) << 4) | ((bitCount - 1) >> 4), ((bitCount - 1) & 15) << 4],
  ...Array(20).fill(0),
];

const MALFORMED: readonly (readonly [what: string, reason: AudioFaultReason, says: RegExp, file: Uint8Array])[] = [
  ['nothing at all', 'empty-file', /empty/, bytesOf()],
  ['one byte', 'not-audio', /not a sound recording/, bytesOf([0])],
  ['three letters of RIFF', 'not-audio', /not a sound recording/, bytesOf('RIF')],
  ['a text renamed to .wav', 'not-audio', /looks like text/, bytesOf('Dear reader, this was never a recording.\n')],
  ['zeros', 'not-audio', /not a sound recording/, new Uint8Array(4096)],
  ['random bytes', 'not-audio', /not a sound recording/, randomBytes(20000, 1)],
  ['RIFF and nothing more', 'damaged-header', /nothing more/, bytesOf('RIFF')],
  ['RIFF with a length', 'damaged-header', /nothing more/, bytesOf('RIFF', u32(36))],
  ['a video', 'unsupported-format', /AVI/, bytesOf('RIFF', u32(100), 'AVI ', Array(100).fill(0))],
  ['a RIFF of an unprintable kind', 'unsupported-format', /"\?\?\?\?"/, bytesOf('RIFF', u32(4), [0, 1, 2, 255])],
  ['WAVE without chunks', 'damaged-header', /no format chunk/, bytesOf('RIFF', u32(4), 'WAVE')],
  ['no format chunk', 'damaged-header', /no format chunk/, riff(DATA)],
  ['the format after the sound', 'damaged-header', /no format chunk/, riff(DATA, FORMAT)],
  ['a format chunk of 0 bytes', 'damaged-header', /0 of 16/, riff(chunk('fmt ', ''), DATA)],
  ['a format chunk of 15 bytes', 'damaged-header', /15 of 16/, riff(chunk('fmt ', formatBody().slice(0, 15)), DATA)],
  ['no sound chunk', 'no-audio-data', /sound is missing/, riff(FORMAT)],
  ['a sound chunk without a length', 'no-audio-data', /sound is missing/, bytesOf(riff(FORMAT), 'data', [1, 2])],
  ['an empty sound chunk', 'no-audio-data', /no sound/, riff(FORMAT, chunk('data', ''))],
  ['less than one sample', 'no-audio-data', /no sound/, riff(FORMAT, chunk('data', [1]))],
  [
    'a chunk that claims 4 GiB before the sound',
    'no-audio-data',
    /sound is missing/,
    bytesOf(riff(FORMAT), 'LIST', u32(0xfffffff0), DATA),
  ],
  ['a heap of empty chunks', 'no-audio-data', /sound is missing/, riff(FORMAT, new Uint8Array(80_000))],
  ['no channels', 'damaged-header', /no channels/, format({ channelCount: 0, frameBytes: 2 })],
  ['0 bits', 'damaged-header', /0 bits/, format({ bitCount: 0, frameBytes: 2 })],
  ['more bits than the frame has', 'damaged-header', /does not fit together/, format({ bitCount: 24, frameBytes: 2 })],
  [
    'frames that no channel count fits',
    'damaged-header',
    /does not fit together/,
    format({ channelCount: 2, frameBytes: 3 }),
  ],
  ['frames of 65535 bytes', 'damaged-header', /does not fit together/, format({ frameBytes: 65535 })],
  ['16-bit floating point', 'damaged-header', /does not fit together/, format({ code: 3, bitCount: 16 })],
  ['40-bit integers', 'damaged-header', /does not fit together/, format({ bitCount: 40 })],
  ['a rate of 0', 'unsupported-rate', /0 Hz/, format({ rateHz: 0 })],
  ['a telephone rate', 'unsupported-rate', /8000 Hz/, format({ rateHz: 8000 })],
  ['just below the lowest rate', 'unsupported-rate', /22049 Hz/, format({ rateHz: 22049 })],
  ['just above the highest rate', 'unsupported-rate', /192001 Hz/, format({ rateHz: 192001 })],
  ['the largest rate that can be written', 'unsupported-rate', /4294967295 Hz/, format({ rateHz: 0xffffffff })],
  ['A-law', 'unsupported-codec', /A-law/, format({ code: 6, bitCount: 8 })],
  ['µ-law', 'unsupported-codec', /µ-law/, format({ code: 7, bitCount: 8 })],
  ['ADPCM', 'unsupported-codec', /ADPCM/, format({ code: 2, bitCount: 4, frameBytes: 256 })],
  ['MP3 inside WAV', 'unsupported-codec', /MPEG layer 3/, format({ code: 85, bitCount: 0, frameBytes: 1 })],
  ['an unheard-of codec', 'unsupported-codec', /format number 4660/, format({ code: 0x1234 })],
  ['an extended format with A-law in it', 'unsupported-codec', /A-law/, riff(chunk('fmt ', extensibleBody(6)), DATA)],
  [
    'an extended format with a strange id',
    'unsupported-codec',
    /neither/,
    riff(chunk('fmt ', [...extensibleBody(1).slice(0, 39), 0]), DATA),
  ],
  [
    'an extended format cut short',
    'unsupported-codec',
    /neither/,
    riff(chunk('fmt ', extensibleBody(1).slice(0, 26)), DATA),
  ],
  ['an AIFF file', 'unsupported-format', /AIFF/, bytesOf('FORM', [0, 0, 0, 100], 'AIFF')],
  ['a CAF file', 'unsupported-format', /CAF/, bytesOf('caff', u16(1))],
  ['an M4A file', 'unsupported-format', /M4A/, bytesOf([0, 0, 0, 32], 'ftypM4A ')],
  ['a MIDI file', 'unsupported-format', /MIDI/, bytesOf('MThd', [0, 0, 0, 6])],
  ['a WebM file', 'unsupported-format', /WebM/, bytesOf([0x1a, 0x45, 0xdf, 0xa3, 0, 0])],
  ['an AAC stream', 'unsupported-format', /AAC/, bytesOf([0xff, 0xf1, 0x50, 0x80])],
  ['four letters of FLAC', 'damaged-header', /FLAC file whose header/, bytesOf('fLaC')],
  [
    'FLAC that begins with another block',
    'damaged-header',
    /FLAC file whose header/,
    bytesOf('fLaC', [4], Array(60).fill(0)),
  ],
  ['a FLAC header without sound', 'no-audio-data', /no sound could be decoded/, bytesOf('fLaC', flacInfo(44100, 16))],
  ['FLAC at a telephone rate', 'unsupported-rate', /8000 Hz/, bytesOf('fLaC', flacInfo(8000, 16))],
  ['FLAC of 32 bits', 'unsupported-codec', /32 bits/, bytesOf('fLaC', flacInfo(44100, 32))],
  ['four letters of OGG', 'damaged-header', /OGG file/, bytesOf('OggS')],
  ['OGG with Opus in it', 'unsupported-codec', /Opus/, oggPage(bytesOf('OpusHead', Array(11).fill(1)))],
  ['OGG with Speex in it', 'unsupported-codec', /Speex/, oggPage(bytesOf('Speex   ', Array(72).fill(1)))],
  ['OGG with something else in it', 'damaged-header', /OGG file/, oggPage(bytesOf('\x80theora'))],
  [
    'a Vorbis header without sound',
    'no-audio-data',
    /no sound could be decoded/,
    oggPage(bytesOf('\x01vorbis', u32(0), [1], u32(44100), Array(14).fill(0))),
  ],
  [
    'a tag that claims more than the file',
    'not-audio',
    /not a sound recording/,
    bytesOf('ID3', [4, 0, 0, 0x7f, 0x7f, 0x7f, 0x7f]),
  ],
  [
    'a single MP3 frame head',
    'not-audio',
    /not a sound recording/,
    bytesOf([0xff, 0xfb, 0x90, 0x00], Array(200).fill(0)),
  ],
];

describe('a file that cannot be read says why', () => {
  it.each(MALFORMED)('%s', async (_what, reason, says, file) => {
    const fault = await faultOf(file);
    expect(fault?.reason).toBe(reason);
    expect(fault?.message).toMatch(says);
    expect(fault?.message).not.toMatch(/\n|undefined|NaN/);
  });
});

const SAMPLES = ['a4-one-string.wav', 'a4-one-string.flac', 'a4-one-string.ogg', 'a4-one-string.mp3'];

describe.each(SAMPLES)('%s', (name) => {
  const whole = new Uint8Array(readFileSync(new URL(`../../../sample-audio/${name}`, import.meta.url)));

  it('cut off anywhere in its first bytes is refused or read with a warning, never silently', async () => {
    // Every length of what tells the formats apart, then every seventh.
    for (let length = 0; length < 160; length += length < 50 ? 1 : 7) {
      const cut = whole.subarray(0, length);
      const fault = await faultOf(cut);
      if (!fault) expect((await readSound(cut)).warnings, `${length} bytes`).toContain('truncated');
    }
  });

  it('cut off in the middle is read up to there', async () => {
    const { samples, warnings } = await readSound(whole.subarray(0, Math.floor(whole.length / 2)));
    expect(warnings).toEqual(['truncated']);
    expect(samples.length).toBeGreaterThan(30_000);
    expect(samples.length).toBeLessThan(120_000);
  });

  it.each([1, 2, 3, 4, 5, 6])('with damaged bytes gives finite sound or a fault (seed %i)', async (seed) => {
    const random = seededRandom(seed);
    const damaged = Uint8Array.from(whole);
    const reach = seed % 2 === 0 ? damaged.length : 400;
    for (let count = 0; count < 5 * seed; count += 1)
      damaged[Math.floor(random.uniform() * reach)] = Math.floor(random.uniform() * 256);
    if (await faultOf(damaged)) return;
    const { samples } = await readSound(damaged);
    expect(samples.every(Number.isFinite)).toBe(true);
  });
});

function randomBytes(count: number, seed: number): Uint8Array {
  const random = seededRandom(seed);
  return Uint8Array.from({ length: count }, () => Math.floor(random.uniform() * 256));
}
