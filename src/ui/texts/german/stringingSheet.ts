import type { sheetTexts } from '../stringingSheet.ts';
import type { InTranslation } from '../translation.ts';

const cells = (count: number) => `${count} ${count === 1 ? 'Zelle' : 'Zellen'}`;
const rows = (count: number) => `${count} ${count === 1 ? 'Zeile' : 'Zeilen'}`;

export const germanSheetTexts: InTranslation<typeof sheetTexts> = {
  title: 'Tabelle',
  note: 'Eine Zeile je Ton. Jeder Eintrag wird sofort gespeichert.',
  label: (name) => `Bezugsliste, ${name}`,
  rowTitle: 'Ton',
  columns: {
    stringCount: 'Saiten',
    speakingLengthMm: 'Klingende Länge',
    wireDiameterMm: 'Draht',
    coreDiameterMm: 'Kern',
    wrap: 'Umspinnung',
    wireGrade: 'Drahtsorte',
    bridge: 'Steg',
  },
  fields: {
    stringCount: 'Saitenzahl',
    speakingLengthMm: 'klingende Länge',
    wireDiameterMm: 'Drahtdurchmesser',
    coreDiameterMm: 'Kerndurchmesser',
    wrap: 'Metall der Umspinnung',
    wireGrade: 'Drahtsorte',
    bridge: 'Steg',
  },
  units: { mm: 'mm' },
  wireNote: 'Der Durchmesser blanken Drahts, oder über der Umspinnung einer umsponnenen Saite.',
  interpolated: 'interpoliert, nicht gemessen',
  keysTitle: 'Tasten',
  keys: [
    'Pfeile bewegen; Tippen ersetzt, F2 ändert, was da steht.',
    'Eingabe speichert und geht hinunter, Tabulator speichert und geht nach rechts; Eingabe nach mehreren Tabulatoren geht in die nächste Zeile. Escape gibt auf.',
    'Umschalt und Pfeile wählen mehrere Zellen aus; Entf leert sie; Strg D füllt die ausgewählten aus ihrer ersten Zeile.',
    'Strg C und Strg V kopieren und fügen ein, aus einer und in eine Tabellenkalkulation; Strg Z und Strg Y nehmen zurück und wiederholen.',
    'c, i und b genügen für Kupfer (copper), Eisen (iron) und Messing (brass); b und l für den Basssteg (bass) und den langen Steg (long).',
    'Ein Durchmesser lässt sich mit seiner Nummer tippen, als 17 inch, 13½ metric oder 17 i, und in Zoll, als 0,039 in.',
  ],
  typed: 'Eine Zahl von 12 bis 26, als Durchmesser getippt,',
  typedChoices: { ask: 'wird erfragt', inch: 'ist eine Nummer der Zoll-Reihe', metric: 'ist eine metrische Nummer' },
  buttons: {
    undo: 'Rückgängig',
    redo: 'Wiederholen',
    fillDown: 'Nach unten füllen',
    interpolate: 'Leere Zellen interpolieren',
    takeBack: 'Interpolierte herausnehmen',
    paste: 'Zeilen einfügen',
    bringIn: 'CSV einlesen',
    save: 'Als CSV speichern',
  },
  interpolateHint:
    'Interpolierte Zellen tragen das Zeichen ≈ und stehen kursiv. Gerechnet werden sie zwischen gemessenen Tönen eines Abschnitts, nie über einen Übergang hinweg.',
  interpolated2: (count) =>
    count === 0
      ? 'Nichts zu interpolieren: Eine leere Zelle braucht in ihrem Abschnitt eine gemessene darunter und darüber.'
      : `${cells(count)} interpoliert, mit ≈ gekennzeichnet. Strg Z nimmt sie zurück.`,
  takenOut: (count) =>
    `${cells(count)} geleert, die interpoliert ${count === 1 ? 'war' : 'waren'}. Strg Z bringt sie zurück.`,
  pasted: (notes, count) => `${cells(count)} in ${rows(notes)} eingefügt. Strg Z nimmt sie zurück.`,
  broughtIn: (count, file) => `${rows(count)} aus ${file} eingelesen. Strg Z nimmt sie zurück.`,
  notBroughtIn: (file, why) => `${file} ${why}`,
  paste: {
    title: 'Zeilen einfügen',
    intro:
      'Aus einer Tabellenkalkulation oder Liste: Tabulatoren, Strichpunkte oder Kommas zwischen den Zellen, Dezimalpunkte oder -kommas. Eine erste Zeile mit Spaltennamen ordnet die Spalten zu; eine Spalte mit Tonnamen die Zeilen.',
    field: 'Zeilen',
    start: (note, column) => `Ohne Namen beginnen die Zeilen bei ${note}, ${column}.`,
    summary: (count, rowCount) => `${cells(count)} in ${rows(rowCount)} lesbar.`,
    header: 'Die erste Zeile wurde als Namen der Spalten gelesen.',
    noHeader: 'Eine Zeile mit Namen wurde nicht gefunden.',
    unknownColumns: (names) => `Weggelassen, da eine Bezugsliste solche Spalten nicht hat: ${names}.`,
    complaints: (count) => `${cells(count)} nicht lesbar:`,
    moreComplaints: (count) => `und ${count} weitere`,
    complaint: (line, cell, what) => `Zeile ${line}, Zelle ${cell}: ${what}`,
    problems: {
      'unknown-note': (text) => `„${text}“ ist kein Ton.`,
      'outside-schedule': (text) => `„${text}“ liegt außerhalb der Bezugsliste.`,
    },
    takeAll: 'Einsetzen',
    takeRest: 'Einsetzen, was lesbar ist',
    nothing: 'Nichts davon ist lesbar.',
  },
  problems: {
    'not-a-number': (text) =>
      `„${text}“ ist keine Zahl. Tippen Sie eine wie 412,5 oder 412.5, oder lassen Sie die Zelle leer.`,
    'not-whole': (text) => `„${text}“ ist keine ganze Zahl von Saiten.`,
    'out-of-range': (text, least, most) =>
      `„${text}“ liegt nicht zwischen ${least} und ${most}, wo alle Klaviersaiten liegen.`,
    'gauge-number': (text) => `„${text}“ ist kein Durchmesser in Millimetern; als Nummer einer Drahtstärke wäre es`,
    inches: (text) => `„${text}“ ist kein Durchmesser in Millimetern; in Zoll wäre es`,
    'not-one-of': (text, choices) => `„${text}“ muss ${choices} sein, oder leer.`,
  },
  orWord: 'oder',
  refused: (note, column, why) => `${note}, ${column}: ${why}`,
  use: (meaning) => `${meaning} verwenden`,
  complaints: {
    title: (count) => `${count === 1 ? 'Eine Stelle' : `${count} Stellen`} zum Ansehen`,
    none: 'Nichts in der Tabelle widerspricht sich.',
    line: (note, column, what) => `${note}, ${column}: ${what}`,
    goTo: (note, column) => `Zu ${note}, ${column} gehen`,
    severity: { fault: 'Daraus wird keine Zahl', look: 'Noch einmal ansehen' },
    kinds: {
      'core-not-thinner': 'der Kern ist nicht dünner als die ganze Saite',
      'wrap-missing': 'es gibt einen Kern, aber kein Metall der Umspinnung',
      'core-missing': 'es gibt eine Umspinnung, aber keinen Kern',
      'length-rises': 'länger als der Ton darunter im selben Abschnitt',
      'length-off-line': 'mehr als 4 % neben der Linie der Nachbarn',
      'diameter-rises': 'dicker als der Ton darunter im selben Abschnitt',
      'wound-among-plain': 'umsponnen, über einer blanken Saite',
      'string-count-falls': 'weniger Saiten als der Ton darunter',
    },
  },
};
