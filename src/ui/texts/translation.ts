/** How another language stands to English: the same shape, every word another. */

/** What a whole translation of these words has to hold. */
export type Translated<Words> = Words extends string
  ? string
  : Words extends (...values: infer Values) => infer Sentence
    ? (...values: Values) => Translated<Sentence>
    : { readonly [Key in keyof Words]: Translated<Words[Key]> };

/** A translation that is under way: what it lacks stays English. */
export type InTranslation<Words> = Words extends string
  ? string
  : Words extends (...values: infer Values) => infer Sentence
    ? (...values: Values) => Translated<Sentence>
    : { readonly [Key in keyof Words]?: InTranslation<Words[Key]> | undefined };

type Branch = { readonly [key: string]: unknown };

function isBranch(value: unknown): value is Branch {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The translation where it has a word, else English. */
export function inLanguage<Words>(english: Words, translation: InTranslation<Words> | undefined): Words {
  const chosen = isBranch(english) ? branchInLanguage(english, isBranch(translation) ? translation : {}) : translation;
  // The types of both say that a translated word has the shape of the English one.
  return (chosen ?? english) as Words;
}

function branchInLanguage(english: Branch, translation: Branch): Branch {
  return Object.fromEntries(
    Object.entries(english).map(([key, word]) => [key, inLanguage<unknown>(word, translation[key] as undefined)]),
  );
}

/**
 * Where a translation has no word, or one of another kind than English (a sentence for a function), as paths.
 * @example missingWords({ a: { b: 'x' } }, {}) // ['a.b']
 */
export function missingWords(english: unknown, translation: unknown, path = ''): string[] {
  if (!isBranch(english)) return isSameKind(english, translation) ? [] : [path];
  const branch = isBranch(translation) ? translation : {};
  return Object.entries(english).flatMap(([key, word]) =>
    missingWords(word, branch[key], path === '' ? key : `${path}.${key}`),
  );
}

function isSameKind(english: unknown, translation: unknown): boolean {
  if (Array.isArray(english)) return Array.isArray(translation) && translation.length === english.length;
  return typeof english === typeof translation && (translation !== '' || english === '');
}
