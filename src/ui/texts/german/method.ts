import type { methodTexts } from '../method.ts';
import type { Translated } from '../translation.ts';

export const germanMethodTexts: Translated<typeof methodTexts> = {
  title: 'Wie es misst, und wie sicher das ist',
  link: 'Wie es misst',
  subtitle:
    'Jedes Bild hier unten wurde eben jetzt auf diesem Gerät gerechnet, mit denselben Schritten, die Ihre Messreihen messen.',
  working: 'Wird gerechnet …',
  failed: (detail) =>
    `Dieses Bild ließ sich nicht herstellen: ${detail}. Laden Sie die Seite neu, um es erneut zu versuchen.`,
  axis: {
    frequency: 'Frequenz, Hz',
    seconds: 'Sekunden',
    level: 'dB unter Vollaussteuerung',
    cents: 'Cent; unter der Linie tiefer',
    errors: 'Fehler, in angegebenen Unsicherheiten',
    share: 'Anteil der Zahlen',
    note: 'Ton',
  },
  note: {
    title: 'Ein Ton',
    what: 'In einer angeschlagenen Saite klingen viele Teiltöne zugleich. Weil Draht steif ist, liegen sie umso weiter auseinander, je höher sie sind; um wie viel, ist die Inharmonizität der Saite. Die Tonhöhe ist die von Teilton 1, und alle Teiltöne zusammen machen sie sicherer.',
    picture: (note) => `Spektrum von ${note}`,
    legend: {
      spectrum: 'was zu hören war',
      partial: 'ein gefundener Teilton',
      fitted: 'obere Striche: wo die Teiltöne einer steifen Saite liegen',
      even: 'untere Striche: ganze Vielfache von Teilton 1',
    },
    summary: (note, count) =>
      `Spektrum von ${note}. ${count} Teiltöne wurden gefunden; ihr Abstand von den ganzen Vielfachen des Teiltons 1 wächst mit ihrer Nummer.`,
    found: (note, count) => `Von selbst gefunden: ${note}, ${count} Teiltöne`,
    partial1: 'Teilton 1',
    pitch: 'Gegen die gleichstufige Stimmung',
    inharmonicity: 'Inharmonizität B',
    truth: 'Wahr',
    truthValue: (cents) => `${cents}; dieser Klang wurde gerechnet, die Wahrheit ist also bekannt`,
  },
  beat: {
    title: 'Eine Saite, die in sich schwebt',
    what: 'Jeder Teilton wird für sich betrachtet, während er verklingt. Liegen in einem Teilton zwei Töne dicht beieinander, schwillt er an und ab: eine falsche Schwebung. Die geraden Linien sind die gefundenen Töne; was zu hören war, schwingt zwischen ihrer Summe und ihrem Unterschied.',
    picture: (partialNumber, note) => `Teilton ${partialNumber} von ${note}, während er verklingt`,
    legend: { heard: 'was zu hören war', tone: 'ein darin gefundener Ton' },
    summary: (partialNumber, rate) =>
      `Der Pegel von Teilton ${partialNumber} fällt und schwingt, ${rate}; zwei gerade Linien sind die darin gefundenen Töne.`,
    rate: 'Gefundene Schwebung',
    rateValue: (rate, uncertainty) => `${rate} ± ${uncertainty}`,
    depth: 'Vom Gipfel zum Tal',
    truth: 'Wahr',
    truthRate: (rate) => rate,
  },
  year: {
    title: 'Wetter und Holz',
    what: 'Zwischen zwei Besuchen bewegt das Wetter alle Saiten einer Lage gleich, und es kommt zurück. Dieser Anteil wird aus allen Besuchen gemeinsam bestimmt und abgezogen. Was bleibt, ist jeder Saite eigen; ein Wirbel wird erst genannt, wenn dieselbe Saite immer wieder verliert, um mehr als ihre Unsicherheit.',
    read: (from, to) => `Was die Saiten taten, ${from} bis ${to}`,
    left: 'Was bleibt, wenn das Wetter abgezogen ist',
    legend: {
      reading: 'wie gemessen',
      whole: 'was Wetter, Setzen und der gemeinsame Gang des Instruments erklären',
      own: 'übrig, mit zwei Standardunsicherheiten nach jeder Seite',
      named: 'eine Saite, die alle Besuche zusammen als nachgebend nennen',
    },
    summaryRead: (count, from, to) =>
      `Änderung von ${count} Saiten eines erfundenen Instruments vom ${from} bis ${to}, und der glatte Anteil, den das Wetter erklärt.`,
    summaryLeft: (namedCount) =>
      `Dieselben Saiten ohne den glatten Anteil; ${namedCount} davon sind als nachgebend genannt.`,
    truth: (truth, named, namedCount, wrongCount) =>
      `Das Instrument ist erfunden, die Wahrheit also bekannt: Die Wirbel ${truth} geben nach. Genannt, aus allen dreizehn Besuchen: ${namedCount} ${namedCount === 1 ? 'Saite' : 'Saiten'} (${named}), ${wrongCount === 0 ? 'keine davon zu Unrecht' : `${wrongCount} davon zu Unrecht`}.`,
    none: 'keine',
  },
  certainty: {
    title: 'Wie sicher es ist',
    what: 'Die Zahl nach ± ist eine Standardunsicherheit. Ist sie ehrlich, so liegt die Wahrheit in zwei von drei Fällen innerhalb von ihr und in neunzehn von zwanzig innerhalb des Doppelten. Diagramme zeigen zwei. Ob das stimmt, wird hier geprüft: Klänge mit bekannter Wahrheit werden gemessen, und jeder Fehler wird an die angegebene Unsicherheit gehalten.',
    picture: 'Fehler von Frequenzen, F0 und B, in angegebenen Unsicherheiten',
    legend: { errors: 'die gefundenen Fehler', normal: 'was ehrliche Unsicherheiten ergeben' },
    summary: (one, two) =>
      `Säulen der Fehler neben der erwarteten Glocke: ${one} innerhalb einer, ${two} innerhalb zweier.`,
    progress: (done, all) => `${done} von ${all} Klängen gemessen`,
    within: (sigmas) => (sigmas === 1 ? 'Innerhalb einer Unsicherheit' : 'Innerhalb zweier Unsicherheiten'),
    withinValue: (share, expected) => `${share}; ehrlich sind ${expected}`,
    count: 'Verglichene Zahlen',
    limits:
      'Diese Klänge sind sauberer als ein Raum. Am Klavier bringen Hammer, Raum und Filzstreifen ihre eigene Streuung dazu: Ein in einer Messreihe zweimal gespielter Ton zeigt, wie viel.',
  },
  limits: {
    title: 'Was es nicht wissen kann',
    clock:
      'Der Takt eines Mikrofons kann zu schnell oder zu langsam gehen und verschiebt jede Tonhöhe gleich. Änderungen zwischen Messreihen mit demselben Gerät berührt das kaum; prüfen lässt es sich unter „Den Takt dieses Mikrofons prüfen“.',
    clockLink: 'Den Takt des Mikrofons prüfen',
    hygrometer:
      'Was ein Hygrometer zeigt, ist ein Augenblick an einem Ort; das Holz erinnert sich an Wochen. Wie feucht das Holz eines Instruments war, wird deshalb auch den Saiten entnommen.',
    evidence:
      'Zwei Messreihen ergeben einen Vergleich, und ein Vergleich benennt keinen Wirbel. „Noch nicht genug Belege“ ist eine Antwort und sagt, welcher Besuch am meisten helfen würde.',
  },
};
