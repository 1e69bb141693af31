import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { beatReason } from '../../src/ui/texts/german/keptSentences.ts';

const WHERE = /\$\{where\}/;

/** Every reason that the judging of beats writes, with a figure where it has one, as it stands in the source. */
const written = ['src/analysis/tone/beatKind.ts', 'src/records/demonstration/inventedReading.ts'].flatMap((path) => {
  const source = readFileSync(path, 'utf8');
  const sentences = [...source.matchAll(/reason(?: =|:) (?:'([^']+)'|`([^`]+)`)/g)].map(
    (one) => one[1] ?? one[2] ?? '',
  );
  return sentences.flatMap((sentence) =>
    WHERE.test(sentence)
      ? ['Partial 2 beats', 'Partials 2 and 3 beat'].map((where) => sentence.replace(WHERE, where))
      : [sentence.replace(/\$\{[^}]+\}/g, '1.5')],
  );
});

it('finds the reasons in the source', () => {
  expect(written.length).toBeGreaterThanOrEqual(9);
});

it.each(written)('is known in German: %s', (sentence) => {
  expect(beatReason(sentence)).not.toBe(sentence);
  if (sentence.includes('1.5')) expect(beatReason(sentence)).toContain('1,5');
});

it('a sentence that is not known is shown as it was kept', () => {
  expect(beatReason('something new')).toBe('something new');
});
