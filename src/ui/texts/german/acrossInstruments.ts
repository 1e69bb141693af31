import type { heldTexts } from '../acrossInstruments.ts';
import type { Translated } from '../translation.ts';

const pieces = (count: number) => (count === 1 ? 'eine Arbeit' : `${count} Arbeiten`);
const instruments = (count: number) => `${count} ${count === 1 ? 'Instrument' : 'Instrumente'}`;

export const germanHeldTexts: Translated<typeof heldTexts> = {
  title: 'Was gehalten hat, und wie lange',
  link: 'Was gehalten hat, und wie lange',
  subtitle: 'Arbeiten an Stimmstock, Draht und Wirbeln, und was daraus wurde.',
  yearsSince: 'Jahre seit der Arbeit',
  work: { 'block-work': 'Arbeit am Stimmstock', restrung: 'neu bezogen', 'pin-replaced': 'Wirbel ersetzt' },
  workAnd: ', ',
  blockUnknown: 'Art des Stimmstocks nicht bekannt',
  noteRange: (range) => `bei ${range}`,
  empty: {
    instruments: 'Noch ist kein Instrument aufgezeichnet.',
    work: 'Noch gibt es nichts, worauf zurückzublicken wäre: Die Jahre zählen von neuem Bezug, ersetzten Wirbeln und Arbeiten am Stimmstock an, und davon ist nichts eingetragen. Unten führt jedes Instrument dorthin, wo es einzutragen ist.',
    unjudged:
      'Noch lässt sich keine Arbeit an diesen Instrumenten beurteilen. Was jedem noch fehlt, steht unten, mit dem Weg dorthin.',
  },
  progress: {
    title: 'Rückschau',
    reading: (name) => `Die Aufzeichnungen von ${name} werden gelesen …`,
    judging: (name, done, all) => `${name}: Besuch ${done} von ${all}`,
    jobs: (done, all) => `${done} von ${all} ${all === 1 ? 'Arbeit' : 'Arbeiten'} beurteilt`,
    why: 'Jeder Besuch seit der Arbeit wird mit dem beurteilt, was an jenem Tag bekannt war. Das dauert einige Sekunden je Instrument und wird auf diesem Gerät gemerkt.',
    stop: 'Anhalten',
    stopped: 'Angehalten. Gezeigt wird, was bis dahin beurteilt war.',
    goOn: 'Weitermachen',
    failed: (name, detail) => `${name} ließ sich nicht beurteilen: ${detail}`,
  },
  choices: {
    alarm: 'Hält nicht mehr ab',
    alarms: { watch: 'Beobachten oder Gibt nach', 'giving way': 'Nur Gibt nach' },
    grouping: 'Zusammengefasst nach',
    groupings: { block: 'Art des Stimmstocks', work: 'Was getan wurde' },
    whose: 'Instrumente',
    own: 'Die eigenen',
    invented: 'Die erfundenen',
  },
  spans: {
    title: 'Jahre seit der Arbeit: beobachtet, und wie es am Ende stand',
    name: 'Beobachtete Jahre',
    unwatched: 'noch nicht beobachtet',
    watched: 'beobachtet',
    ends: { holding: 'hielt noch beim letzten Mal', watch: 'beobachten', 'giving way': 'gibt nach' },
    summary: (count) =>
      `Für ${pieces(count)} die seither beobachteten Jahre und wie der Stimmstock am Ende stand. Dasselbe steht in der Tabelle darunter.`,
    detail: (work, years, end) => `${work} · ${years}, ${end}`,
  },
  table: {
    caption: 'Jede Arbeit mit den Jahren, in denen sie beobachtet wurde',
    instrument: 'Instrument',
    block: 'Stimmstock',
    work: 'Arbeit',
    doneOn: 'Getan am',
    watched: 'Beobachtet',
    years: 'Jahre nach der Arbeit',
    result: 'Wie es steht',
    from: (from, to) => `${from} bis ${to}`,
    yearsFrom: (from, to) => `${from} bis ${to}`,
    held: 'hält noch',
    takenBack: (date) => `hält noch; ein Zweifel vom ${date} wurde zurückgenommen`,
    ended: {
      watch: (date) => `beobachten seit ${date}`,
      'giving way': (date) => `gibt nach seit ${date}`,
    },
  },
  group: {
    title: (name, count) => `${name}: ${instruments(count)}`,
    without: 'Keine Rate behauptet',
    few: (fewest) => `Weniger als ${fewest}: Jedes ist oben für sich aufgeführt.`,
    small:
      'Kleine Zahlen sagen wenig: Haben vier Instrumente alle gehalten, kann der Anteil aller solchen, die halten, noch immer bei nur vier von zehn liegen.',
    unknown:
      'Die Art des Stimmstocks ist nicht eingetragen oder wurde nach dieser Arbeit geändert: Es wird keine Rate behauptet. Tragen Sie die Art beim Instrument ein.',
    late: 'Zu keiner Zeit wurden drei davon zugleich beobachtet: Es wird keine Rate behauptet.',
  },
  share: {
    name: (group) => `Anteil, der hält, ${group}`,
    title: (group) =>
      `Anteil, der noch hält (${group}), mit Grenzen zu 95 %; ein Strich, wo eines zuletzt noch haltend gesehen wurde`,
    summary: (group, sentence) => `Anteil von ${group}, der über die Jahre seit der Arbeit noch hält. ${sentence}`,
    atRisk: 'Unter Beobachtung:',
    from: (years) =>
      `Die Kurve beginnt ${years} nach der Arbeit, als drei zugleich beobachtet wurden: Sie ist der Anteil derer, die bis dahin hielten.`,
    earlier: (count) =>
      `${count === 1 ? 'Eine Arbeit hielt' : `${count} Arbeiten hielten`} schon vorher nicht mehr und ${count === 1 ? 'ist' : 'sind'} nicht darin.`,
    sentence: (years, share, uncertainty, low, high) =>
      `Nach ${years}: ${share} halten (Standardunsicherheit ${uncertainty}; Grenzen zu 95 %: ${low} bis ${high}).`,
    noneEnded: (years, low) =>
      `Keines hat in ${years} Beobachtung nachgelassen; der Anteil, der hält, ist mit 95 % mindestens ${low}.`,
    caption: 'Anteil, der hält, zu jedem Datum, an dem etwas nicht mehr hielt',
    years: 'Jahre',
    observed: 'Unter Beobachtung',
    ended: 'Hielt nicht mehr',
    holds: 'Anteil, der hält',
    uncertainty: 'Standardunsicherheit',
    limits: 'Grenzen zu 95 %',
    limitsOf: (low, high) => `${low} bis ${high}`,
  },
  missing: {
    title: 'Was fehlt',
    note: 'Eine Arbeit mit ihrem Datum, und danach etwa drei Besuche mit den Messreihen „hinterlassen“ und „vorgefunden“.',
    none: 'Nichts: Jede eingetragene Arbeit ließ sich beurteilen.',
    work: 'Neuer Bezug, ersetzte Wirbel oder Arbeit am Stimmstock sind nicht eingetragen.',
    enterWork: 'Unter „Arbeiten“ eintragen',
    visits: (work, date, visits) =>
      `${work} am ${date}, und seither ${visits === 0 ? 'kein Besuch' : visits === 1 ? 'nur ein Besuch' : `nur ${visits} Besuche`} mit Messwerten.`,
    beginVisit: 'Besuch beginnen',
    blockKind: 'Die Art des Stimmstocks ist nicht eingetragen; danach werden Instrumente verglichen.',
    enterBlockKind: 'Art eintragen',
  },
  method: {
    title: 'Wie das zu lesen ist',
    lines: [
      'Die Jahre zählen vom Tag der Arbeit an. Ein Instrument zählt ab dem Besuch vor seinem ersten Urteil, weil davor nichts zu finden war.',
      'Ein Ende trägt das Datum des Besuchs, der es zeigte; es trat seit dem Besuch davor ein. Was noch hält, zählt bis zu seinem letzten Besuch.',
      'Ein Urteil bei jedem Besuch schlägt früher oder später falschen Alarm. Ein Alarm, den das letzte Urteil zurücknimmt, zählt nicht, es sei denn, dazwischen wurde gearbeitet.',
      'Die Anteile sind die Produkt-Limit-Schätzung von Kaplan und Meier (1958) mit Greenwoods Unsicherheit; ihre Grenzen sind für kleine Zahlen gemacht (Fay, Brittain und Proschan 2013).',
      'Instrumente, die in dieselbe Werkstatt zurückkommen, sind keine Zufallsauswahl, und solche, die halten, werden vielleicht seltener besucht. Ein Unterschied zwischen zwei Gruppen ist eine Frage, keine Antwort.',
    ],
  },
};
