/** The few words and signs that stand inside formatted figures, by language. */
import { figureLanguage, type Language } from './formatLanguage.ts';

export type FigureWords = {
  readonly range: (from: string, to: string) => string;
  readonly cents: string;
  readonly centsAYear: string;
  readonly centsPerRh: string;
  readonly beatsASecond: string;
  /** Relative humidity, behind the figure. */
  readonly rh: string;
  readonly lessThanAMinuteLeft: string;
  readonly minutesLeft: (count: number) => string;
  readonly lessThanAMonth: string;
  readonly months: (count: number) => string;
  readonly years: (figure: string) => string;
  readonly moreThan: string;
  readonly lessThan: string;
  readonly yes: string;
  readonly no: string;
  readonly bytes: string;
  readonly tonnesForce: string;
  readonly gaugeSeries: { readonly metric: string; readonly inch: string };
};

const english: FigureWords = {
  range: (from, to) => `${from} to ${to}`,
  cents: 'cents',
  centsAYear: 'cents a year',
  centsPerRh: 'cents per\u00a0%\u00a0RH',
  beatsASecond: 'beats a second',
  rh: '% RH',
  lessThanAMinuteLeft: 'less than a minute left',
  minutesLeft: (count) => (count <= 1 ? 'about a minute left' : `about ${count} minutes left`),
  lessThanAMonth: 'less than a month',
  months: (count) => (count === 1 ? '1 month' : `${count} months`),
  years: (figure) => `${figure} ${figure === '1' ? 'year' : 'years'}`,
  moreThan: 'more than',
  lessThan: 'less than',
  yes: 'yes',
  no: 'no',
  bytes: 'bytes',
  tonnesForce: 'tonnes-force',
  gaugeSeries: { metric: 'metric', inch: 'inch' },
};

const german: FigureWords = {
  range: (from, to) => `${from} bis ${to}`,
  cents: 'Cent',
  centsAYear: 'Cent im Jahr',
  centsPerRh: 'Cent je\u00a0%\u00a0rF',
  beatsASecond: 'Schwebungen je Sekunde',
  rh: '% rF',
  lessThanAMinuteLeft: 'noch weniger als eine Minute',
  minutesLeft: (count) => (count <= 1 ? 'noch etwa eine Minute' : `noch etwa ${count} Minuten`),
  lessThanAMonth: 'weniger als ein Monat',
  months: (count) => (count === 1 ? '1 Monat' : `${count} Monate`),
  years: (figure) => `${figure} ${figure === '1' ? 'Jahr' : 'Jahre'}`,
  moreThan: 'mehr als',
  lessThan: 'weniger als',
  yes: 'ja',
  no: 'nein',
  bytes: 'Byte',
  tonnesForce: 'Tonnen Zug',
  gaugeSeries: { metric: 'metrisch', inch: 'Zoll' },
};

const WORDS: Record<Language, FigureWords> = { en: english, de: german };

export function figureWords(): FigureWords {
  return WORDS[figureLanguage()];
}
