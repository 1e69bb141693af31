/** German, loaded when it is chosen. An area that is not whole here is shown in English where it lacks words. */
import type { Texts } from '../../texts.ts';
import type { InTranslation } from '../translation.ts';
import { germanCommonTexts } from './common.ts';

export const germanTexts = {
  common: germanCommonTexts,
} satisfies InTranslation<Texts>;
