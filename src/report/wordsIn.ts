/** The pages' words in a language. Figures and dates have to be written in the same one (piano/formatLanguage.ts). */
import type { Language } from '../piano/formatLanguage.ts';
import { germanReportWords } from './germanWords.ts';
import { englishReportWords, type ReportWords } from './words.ts';

const WORDS: Readonly<Record<Language, ReportWords>> = { en: englishReportWords, de: germanReportWords };

export function reportWordsIn(language: Language): ReportWords {
  return WORDS[language];
}
