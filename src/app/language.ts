/** The language of the page: as the device says, unless the user chose; the choice is remembered on this device. */
import { LANGUAGES, type Language, writeFiguresIn } from '../piano/formatLanguage.ts';
import { deviceSetting } from '../ui/deviceSetting.ts';
import { speak } from '../ui/texts.ts';

export type LanguageChoice = 'device' | Language;

export const languageSetting = deviceSetting<LanguageChoice>('stillpin-language', ['device', ...LANGUAGES]);

/** The first language of the list that there are words for. @example languageOf('device', ['de-AT', 'en']) // 'de' */
export function languageOf(choice: LanguageChoice, deviceLanguages: readonly string[]): Language {
  if (choice !== 'device') return choice;
  const names = deviceLanguages.map((tag) => tag.toLowerCase().split('-')[0]);
  return names.flatMap((name) => LANGUAGES.find((language) => language === name) ?? [])[0] ?? 'en';
}

/**
 * Puts the chosen language on the page. It has to be done before a screen is loaded, since screens take their words as they are loaded;
 * another choice therefore loads the page anew. Words of other languages than English are fetched here alone.
 */
export async function speakChosenLanguage(): Promise<void> {
  const language = languageOf(languageSetting.read(), window.navigator.languages);
  try {
    if (language === 'de') speak((await import('../ui/texts/german/german.ts')).germanTexts);
  } catch (error) {
    console.info('The German words could not be loaded; the page stays English.', error);
    return;
  }
  writeFiguresIn(language);
  document.documentElement.lang = language;
}
