import { describe, expect, it } from 'vitest';
import { germanTexts } from '../../src/ui/texts/german/german.ts';
import { inLanguage, missingWords } from '../../src/ui/texts/translation.ts';
import { type Texts, texts } from '../../src/ui/texts.ts';

/** Areas whose German is still under way: they are shown in English where they lack words. Every other area has to be whole. */
const UNDER_WAY: readonly string[] = [];

const areas = (Object.keys(texts) as (keyof Texts)[]).filter((area) => !UNDER_WAY.includes(area));

describe('German', () => {
  it.each(areas)('has a word for every English one: %s', (area) => {
    expect(missingWords(texts[area], (germanTexts as Partial<Texts>)[area])).toEqual([]);
  });

  it('has no word that English lacks', () => {
    expect(missingWords(germanTexts, texts)).toEqual([]);
  });

  it('takes as many figures into a sentence as English', () => {
    const counted = (value: unknown, path = ''): [string, number][] => {
      if (typeof value === 'function') return [[path, value.length]];
      if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
      return Object.entries(value).flatMap(([key, word]) => counted(word, `${path}.${key}`));
    };
    const english = new Map(counted(texts));
    const more = counted(germanTexts).filter(([path, count]) => count > (english.get(path) ?? 0));
    expect(more).toEqual([]);
  });
});

describe('a translation', () => {
  const english = { a: 'one', b: { c: (count: number) => `${count} two`, d: ['x', 'y'] } };

  it('stands in the place of English where it has words', () => {
    const spoken = inLanguage(english, { b: { c: (count) => `${count} zwei` } });
    expect([spoken.a, spoken.b.c(3), spoken.b.d]).toEqual(['one', '3 zwei', ['x', 'y']]);
  });

  it('is told where it lacks a word, or has one of another kind', () => {
    expect(missingWords(english, { a: '', b: { d: ['x'] } })).toEqual(['a', 'b.c', 'b.d']);
    expect(missingWords(english, english)).toEqual([]);
  });
});
