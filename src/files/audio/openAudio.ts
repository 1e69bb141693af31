/** Opens a recording by what is in it, whatever its name says. */
import { type AudioOutcome, faulty } from './audioStream.ts';
import type { ByteSource } from './byteSource.ts';
import { afterTags } from './mp3Tags.ts';
import { openFlac } from './openFlac.ts';
import { openMp3 } from './openMp3.ts';
import { openOgg } from './openOgg.ts';
import { openWave } from './openWave.ts';
import { fourLetters } from './waveHeader.ts';

/** Reads the head of the file (and of compressed ones the first sound), so that what comes back can be read. */
export async function openAudio(source: ByteSource): Promise<AudioOutcome> {
  if (source.byteCount === 0) return faulty('empty-file', 'it is empty (0 bytes); record or copy it again');
  const start = await afterTags(source);
  const head = await source.read(start, 512);
  const letters = fourLetters(head, 0);
  if (letters === 'RIFF' || letters === 'RF64') return openRiff(source, head);
  if (letters === 'fLaC') return openFlac(source, start);
  if (letters === 'OggS') return openOgg(source);
  const other = otherFormat(head, letters);
  if (other) return faulty('unsupported-format', `it is ${other}, which is not read; save it as WAV or FLAC`);
  return (await openMp3(source, start)) ?? notAudio(head);
}

function openRiff(source: ByteSource, head: Uint8Array): Promise<AudioOutcome> | AudioOutcome {
  if (head.length < 12) return faulty('damaged-header', 'it is the first few bytes of a WAV file and nothing more');
  const kind = fourLetters(head, 8);
  if (kind === 'WAVE') return openWave(source);
  return faulty('unsupported-format', `it is a RIFF file of the kind "${printable(kind)}", not a sound recording`);
}

function otherFormat(head: Uint8Array, letters: string): string | undefined {
  if (fourLetters(head, 4) === 'ftyp') return 'an MP4 or M4A file (usually AAC)';
  if (head[0] === 0xff && ((head[1] ?? 0) & 0xf6) === 0xf0) return 'an AAC stream';
  return OTHER_FORMATS[letters];
}

const OTHER_FORMATS: Readonly<Record<string, string>> = {
  FORM: 'an AIFF file',
  RIFX: 'a big-endian RIFX file',
  riff: 'a Wave64 file',
  caff: 'a CAF file',
  '.snd': 'an AU file',
  wvPk: 'a WavPack file',
  'MAC ': "a Monkey's Audio file",
  '#!AM': 'an AMR file',
  MThd: 'a MIDI file, which holds notes and no sound',
  '\x30\x26\xb2\x75': 'a Windows Media file',
  '\x1a\x45\xdf\xa3': 'a Matroska or WebM file',
};

function notAudio(head: Uint8Array): AudioOutcome {
  const isText = head.every((byte) => byte >= 0x20 || (byte >= 0x09 && byte <= 0x0d));
  const looks = isText ? ' (it looks like text)' : '';
  return faulty('not-audio', `it is not a sound recording${looks}; WAV, FLAC, OGG Vorbis and MP3 are read`);
}

function printable(letters: string): string {
  return letters.replace(/[^\x20-\x7e]/g, '?');
}
