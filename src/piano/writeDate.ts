/** Dates in words, in UTC. What writes them is made once for each language and form: making it costs more than all that it writes. */
const FORMS = {
  date: { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' },
  monthInFull: { month: 'long', year: 'numeric', timeZone: 'UTC' },
  month: { month: 'short', year: 'numeric', timeZone: 'UTC' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

const writers = new Map<string, Intl.DateTimeFormat>();

/** @param language as Intl names it @param timeMs since 1970 */
export function writeDate(form: keyof typeof FORMS, timeMs: number, language: string): string {
  const key = `${form} ${language}`;
  const writer = writers.get(key) ?? new Intl.DateTimeFormat(language, FORMS[form]);
  writers.set(key, writer);
  return writer.format(timeMs);
}
