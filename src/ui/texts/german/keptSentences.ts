/**
 * Sentences that readings keep in English as they were judged, said in German. One that is not known here (from a newer version, or from
 * another program) is shown as it was kept.
 */
type Known = readonly [english: RegExp, german: (figures: readonly string[]) => string];

const comma = (figure = '') => figure.replace('.', ',');
const partials = (numbers = '') => numbers.replaceAll(' and ', ' und ');

const BEAT_REASONS: readonly Known[] = [
  [
    /^the rate grows with the partial number, as between strings ([\d.]+) cents apart\.?$/i,
    ([cents]) =>
      `die Schwebung wird mit der Nummer des Teiltons schneller, wie bei Saiten ${comma(cents)} Cent auseinander`,
  ],
  [
    /^other partials, which would beat too if strings were out of tune, do not\.?$/i,
    () => 'andere Teiltöne, die bei verstimmten Saiten auch schweben müssten, tun es nicht',
  ],
  [
    /^too few partials are heard well enough to tell a false beat from strings out of tune\.?$/i,
    () =>
      'zu wenige Teiltöne sind gut genug zu hören, um eine falsche Schwebung von verstimmten Saiten zu unterscheiden',
  ],
  [
    /^not assessable: the tone dies before a slow beat could show\.?$/i,
    () => 'nicht zu beurteilen: Der Ton ist fort, bevor sich eine langsame Schwebung zeigen könnte',
  ],
  [
    /^no partial beats; ([\d.]+) a second or faster would have shown\.?$/i,
    ([rate]) => `kein Teilton schwebt; ab ${comma(rate)} je Sekunde hätte es sich gezeigt`,
  ],
  [
    /^partial (\d+) beats and the others do not, on one string alone\.?$/i,
    ([number]) => `Teilton ${number} schwebt und die anderen nicht, auf einer einzelnen Saite`,
  ],
  [
    /^partials ([\d and]+) beat and the others do not, on one string alone\.?$/i,
    ([numbers]) => `die Teiltöne ${partials(numbers)} schweben und die anderen nicht, auf einer einzelnen Saite`,
  ],
  [
    /^the tone is gone before a slow beat could show\.?$/i,
    () => 'der Ton ist fort, bevor sich eine langsame Schwebung zeigen könnte',
  ],
  [/^no partial beats while it can be heard\.?$/i, () => 'kein Teilton schwebt, solange er zu hören ist'],
];

export function beatReason(english: string): string {
  for (const [pattern, german] of BEAT_REASONS) {
    const found = pattern.exec(english.trim());
    if (found) return german(found.slice(1));
  }
  return english;
}
