import { expect, it } from 'vitest';
import { LANGUAGES } from '../../src/piano/formatLanguage.ts';
import { englishReportWords } from '../../src/report/words.ts';
import { reportWordsIn } from '../../src/report/wordsIn.ts';

type Branch = Readonly<Record<string, unknown>>;

/** Every word and sentence by its path; sentences with the same figures put in. */
function wordsOf(branch: Branch, path = ''): [string, string][] {
  return Object.entries(branch).flatMap(([key, word]): [string, string][] => {
    const own = `${path}${key}`;
    if (typeof word === 'string') return [[own, word]];
    if (typeof word === 'function') return key === 'list' ? [] : [[own, String(word(3, 'B', 'C', 'D', 'E'))]];
    return Array.isArray(word) ? [[own, word.join()]] : wordsOf(word as Branch, `${own}.`);
  });
}

/** Spelt alike in every language. */
const ALIKE = ['hearing.decibels', 'hearing.sound', 'long.inharmonicity'];

it.each(LANGUAGES.filter((language) => language !== 'en'))('has a word of its own for everything in %s', (language) => {
  const english = wordsOf(englishReportWords);
  const other = new Map(wordsOf(reportWordsIn(language)));
  expect([...other.keys()].sort()).toEqual(english.map(([path]) => path).sort());
  const untranslated = english.filter(([path, word]) => !ALIKE.includes(path) && other.get(path) === word);
  expect(untranslated.map(([path]) => path)).toEqual([]);
});
