/**
 * The language in which figures and dates are written, one for the whole program. It is said once, at start-up, before anything is
 * formatted: by the page from what its user chose, by the command line from its option. English where nobody says.
 */
export const LANGUAGES = ['en', 'de'] as const;
export type Language = (typeof LANGUAGES)[number];

const LOCALES: Record<Language, string> = { en: 'en-GB', de: 'de-DE' };

let language: Language = 'en';

export function writeFiguresIn(chosen: Language): void {
  language = chosen;
}

export function figureLanguage(): Language {
  return language;
}

/** As Intl names it. */
export function figureLocale(): string {
  return LOCALES[language];
}

/** A figure that was written with a decimal point, with the language's sign. @example withDecimalSign('1.3') // '1,3' in German */
export function withDecimalSign(text: string): string {
  return language === 'de' ? text.replace('.', ',') : text;
}
