import { expect, it } from 'vitest';
import { levelWord } from '../../src/listening/levelWord.ts';
import { texts } from '../../src/ui/texts.ts';

const words = texts.recording.level;

it('calls a low level silence or too quiet only where no note sounds', () => {
  expect((['silent', 'quiet'] as const).map((zone) => levelWord(zone, false))).toEqual([words.silent, words.quiet]);
  expect((['silent', 'quiet'] as const).map((zone) => levelWord(zone, true))).toEqual([words.fading, words.fading]);
});

it('calls a good and a clipping level so whether or not a note was heard', () => {
  for (const isStruck of [true, false])
    expect([levelWord('good', isStruck), levelWord('clipping', isStruck)]).toEqual([words.good, words.clipping]);
});
