/** What on a page is still English although another language is spoken. */
import type { Page } from 'playwright-core';

/** Stands for a figure or a name when a sentence is asked for its own words. */
const FIGURE = '\u0000';
/** Shorter stretches of a sentence are found by chance in other languages too. */
const LEAST_STRETCH = 14;

const FIGURES = new RegExp(`[${FIGURE}\\d][\\d.,\u2009\u00a0]*`, 'g');

type Words = { readonly whole: ReadonlySet<string>; readonly stretches: readonly string[] };

type Sentence = (...values: unknown[]) => unknown;

function wordsOf(table: unknown): string[] {
  if (typeof table === 'string') return [table];
  if (typeof table === 'function') return sentencesOf(table as Sentence);
  if (typeof table !== 'object' || table === null) return [];
  return Object.values(table).flatMap(wordsOf);
}

/** A sentence for one and for many, or nothing where it takes no such values. */
function sentencesOf(sentence: Sentence): string[] {
  return [FIGURE, 1, 0].flatMap((value) => {
    try {
      return wordsOf(sentence(...Array.from({ length: sentence.length }, () => value)));
    } catch {
      return []; // it wants something else than a figure or a name, and has no words of its own then
    }
  });
}

/** Without figures and what stands around them. @example // '10 visits' and '1 visit' come out as 'visits' and 'visit' */
function withoutFigures(text: string): string {
  return text.replace(FIGURES, ' ').replace(/\s+/g, ' ').trim();
}

/** The words of one table that the other does not have. */
export function onlyIn(table: unknown, other: unknown): Words {
  const theirs = wordsOf(other);
  const known = new Set(theirs.map(withoutFigures));
  const alone = wordsOf(table).filter((word) => !known.has(withoutFigures(word)));
  const all = theirs.join('\n');
  const stretches = alone.flatMap((word) => word.split(FIGURES)).map((part) => part.trim());
  return {
    whole: new Set(alone.map(withoutFigures).filter((word) => /[a-z]{3}/i.test(word))),
    stretches: [...new Set(stretches)].filter((part) => part.length >= LEAST_STRETCH && !all.includes(part)),
  };
}

/** Every text of the page by itself, also what only screen readers say and what choices offer. */
export function textsOn(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [document.title];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) found.push(node.textContent ?? '');
    for (const element of document.querySelectorAll('[aria-label],[placeholder],[title],[alt]'))
      for (const name of ['aria-label', 'placeholder', 'title', 'alt']) found.push(element.getAttribute(name) ?? '');
    for (const element of document.querySelectorAll('p,li,td,th,dd,dt,caption,legend,label,h1,h2,h3,desc'))
      found.push(element.textContent ?? '');
    return [...new Set(found.map((text) => text.trim()))].filter((text) => text !== '');
  });
}

/** Texts of a page that stand in the table, or hold a stretch of one of its sentences. */
export function wordsFound(texts: readonly string[], { whole, stretches }: Words): string[] {
  return texts.filter((text) => whole.has(withoutFigures(text)) || stretches.some((stretch) => text.includes(stretch)));
}
