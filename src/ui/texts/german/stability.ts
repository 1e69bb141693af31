import type { stabilityTexts } from '../stability.ts';
import type { InTranslation } from '../translation.ts';

const months = (count: number) => (count === 1 ? 'einem Monat' : `${count} Monaten`);
const visits = (count: number) => (count === 1 ? 'Ein weiterer Besuch' : `${count} weitere Besuche`);
const intervals = (count: number) => (count === 1 ? 'Ein Zeitraum' : `${count} Zeiträume`);
const takes = (count: number) => (count === 1 ? 'Eine Aufnahme' : `${count} Aufnahmen`);
const left = (count: number) => (count === 1 ? 'bleibt' : 'bleiben');

export const germanStabilityTexts: InTranslation<typeof stabilityTexts> = {
  title: 'Stimmhaltung',
  open: 'Stimmhaltung ansehen',
  judging: {
    working: (readings) => `${readings} Messwerte werden beurteilt …`,
    cancel: 'Anhalten',
    cancelled: 'Angehalten, bevor das Urteil fertig war.',
    again: 'Noch einmal beurteilen',
    failed: (detail) => `Das Beurteilen schlug fehl: ${detail} Die Aufzeichnungen sind sicher.`,
  },
  empty: {
    noVisit:
      'Noch ist nichts zu beurteilen. Ob ein Wirbel hält, zeigt sich zwischen zwei Besuchen: Nehmen Sie auf, was Sie hinterlassen, und beim nächsten Mal, was Sie vorfinden.',
    noReading:
      'Die Besuche enthalten noch keinen brauchbaren Messwert. Nehmen Sie eine Messreihe auf: vorgefunden vor dem Stimmen, hinterlassen danach.',
    begin: 'Besuch beginnen',
    noInterval:
      'Noch ist nichts zu vergleichen. Nehmen Sie bei einem Besuch eine Messreihe „hinterlassen“ auf und bei einem späteren eine „vorgefunden“; die Änderung dazwischen erscheint hier.',
  },
  leftOut: {
    unusable: (count) => `${takes(count)} von zu geringer Güte ${left(count)} weg.`,
    'string-unknown': (count) =>
      `${takes(count)} einer einzelnen Saite, deren Platz nicht notiert ist, ${left(count)} weg.`,
  },
  verdict: {
    title: 'Der Stimmstock',
    note: 'Wetter, Setzen und die Fehler des Stimmens selbst sind herausgerechnet, bevor einem Wirbel etwas angelastet wird.',
    states: {
      holding: 'Hält',
      watch: 'Beobachten',
      'giving way': 'Gibt nach',
      'not enough evidence': 'Noch nicht genug Belege',
    },
    holding: (speed) =>
      `Keine Saite sinkt von selbst: Ein Nachgeben schneller als ${speed} ist für jede Saite mit 95 % ausgeschlossen.`,
    watch: (what, sure) => `${what} sinkt vielleicht von selbst (Wahrscheinlichkeit ${sure}).`,
    watchPlain: 'Etwas sinkt vielleicht von selbst, aber sicher ist es nicht.',
    givingWay: (what, sure) => `${what}: von selbst gesunken, Besuch für Besuch (Wahrscheinlichkeit ${sure}).`,
    notEnough: 'Die bisherigen Messwerte können einen nachgebenden Wirbel nicht von Wetter und Zufall unterscheiden.',
    zone: (range) => `die Töne ${range}`,
    singlePins: (count) => (count === 1 ? 'eine Saite' : `${count} einzelne Saiten`),
    and: ' und ',
    reasons: 'Warum',
    against: 'Was dagegen spricht',
    nothingAgainst: 'Nichts in den Messwerten.',
    suspect: (string, rate, sure) => `${string}: ${rate}, Wahrscheinlichkeit ${sure}.`,
    outliers: (count) =>
      `${count === 1 ? 'Ein einzelner Messwert, den' : `${count} einzelne Messwerte, die`} keine langsame Ursache erklärt, ${count === 1 ? 'wurde' : 'wurden'} beiseitegelegt.`,
    grounds: {
      'zone-slips': (range, speed, isAccelerating) =>
        `${range} sinken gemeinsam um ${speed}${isAccelerating ? ', jedes Jahr schneller' : ''}.`,
      'pins-slip': (names, count) => `${names} ${count === 1 ? 'sinkt' : 'sinken'} von selbst, immer wieder.`,
      'pins-suspected': (names) => `Stärker gesunken, als der Zufall erwarten lässt, aber noch nicht sicher: ${names}.`,
      'no-string-slips': (speed) =>
        `Keine Saite sinkt von selbst: Ein Nachgeben schneller als ${speed} ist mit 95 % ausgeschlossen.`,
      'slip-could-hide': (speed) =>
        `Keine Saite fällt auf, aber ein Nachgeben bis ${speed} könnte sich noch in der Streuung verbergen; weitere Besuche würden es eingrenzen.`,
      'never-compared':
        'Auf keine Messreihe „hinterlassen“ folgt eine „vorgefunden“: Nehmen Sie bei den nächsten Besuchen beide auf.',
      'has-to-repeat': (count) =>
        `Ein Nachgeben muss sich wiederholen; ${count === 1 ? 'ein weiterer Besuch' : `${count} weitere Besuche`} mit „vorgefunden“ und „hinterlassen“ ${count === 1 ? 'würde' : 'würden'} es zeigen.`,
      'few-notes': (count) =>
        `${count} ${count === 1 ? 'Ton ist' : 'Töne sind'} zu wenig, um eine Saite vom ganzen Instrument zu unterscheiden; nehmen Sie den ganzen Umfang auf.`,
      'too-short': (years) =>
        `${years} sind zu kurz, um ein Nachgeben von der Jahreszeit zu unterscheiden; kommen Sie in einem halben Jahr wieder.`,
      compared: (count, years) =>
        `${count === 1 ? 'Ein Zeitraum' : `${count} Zeiträume`} zwischen einem Hinterlassen und dem nächsten Vorfinden, zusammen ${years}.`,
      'others-steady': (count, speed) =>
        `Die anderen ${count} Saiten bleiben an ihrem Platz, ein Nachgeben über ${speed} ist ausgeschlossen.`,
      'pins-open': (names) =>
        `Außer ${names}: Davon lässt es sich noch nicht sagen; die nächsten Besuche werden es zeigen.`,
      'season-inferred':
        'Die Luftfeuchte wurde nicht oft genug abgelesen; die Jahreszeit wurde aus den Saiten selbst erschlossen.',
      pin: (name, speed) => `${name} (${speed})`,
      more: (count) => ` und ${count} weitere`,
    },
    ruledOut: 'Ausgeschlossen',
    ruledOutAbove: (speed) => `Ein Nachgeben schneller als ${speed}, für jede nicht genannte Saite, mit 95 %.`,
    ruledOutNothing: 'Noch lässt sich kein Nachgeben ausschließen.',
    nextTitle: 'Was es klären würde',
    nextNothing: 'Nichts ist offen: Nehmen Sie weiter bei jedem Besuch beide Messreihen auf.',
    next: {
      'both-surveys': 'Nehmen Sie beide Messreihen auf: hinterlassen bei diesem Besuch, vorgefunden beim nächsten.',
      'more-intervals': (count) =>
        `${visits(count)} mit beiden Messreihen: Ein Nachgeben muss sich wiederholen, bevor es zählt.`,
      'more-time': (count) =>
        `Mehr Zeit: Kommen Sie in ${months(count)} wieder, damit eine Jahreszeit dazwischenliegt.`,
      narrow: (count, monthsApart, speed) =>
        `${visits(count)} im bisherigen Abstand von ${months(monthsApart)} ${count === 1 ? 'würde' : 'würden'} ein Nachgeben von ${speed} ausschließen oder zeigen.`,
      narrowLong: (speed) =>
        `Ein so langsames Nachgeben wie ${speed} auszuschließen würde noch viele Besuche kosten; am meisten helfen längere Abstände zwischen den Besuchen.`,
      'note-humidity':
        'Notieren Sie bei jedem Besuch die Luftfeuchte: Dann lassen sich Wetter und Holz früher unterscheiden.',
      torqueFlagged: (pins) =>
        `Messen Sie das Drehmoment der nachgebenden Wirbel und zum Vergleich das ihrer Nachbarn: ${pins}.`,
      torqueDoubtful: (pins) => `Ein Drehmoment würde über die zweifelhaftesten Wirbel mehr sagen: ${pins}.`,
    },
    threshold: 'Ein Nachgeben, das zählt',
    thresholdHint:
      'Beim Instrument aufgehoben; 1 Cent im Jahr, wo nichts anderes gewählt ist. Bei 1 Cent im Jahr steht eine Saite nach fünf Jahren 5 Cent neben ihrem Chor, und das hört ein Besitzer. Ein Konzertsaal verlangt vielleicht weniger, ein Übungsraum verträgt mehr.',
  },
  lifeLine: {
    title: 'Lebenslinie',
    note: 'Median aller Saiten, Balken zu zwei Standardunsicherheiten. Linien verbinden, was hinterlassen wurde, mit dem, was der nächste Besuch vorfand.',
    chartTitle: 'Mittlere Tonhöhe in Cent gegen A4 = 440 Hz, darunter die Luftfeuchte in % rF',
    chartTitleAt: (humidity) => `Mittlere Tonhöhe in Cent gegen A4 = 440 Hz, wie sie bei ${humidity} stünde`,
    name: 'Lebenslinie',
    found: 'vorgefunden',
    left: 'hinterlassen',
    humidity: 'Luftfeuchte',
    show: 'Tonhöhe',
    choices: { read: 'wie gemessen', corrected: 'bei einer Luftfeuchte' },
    humidityField: 'Luftfeuchte',
    humidityFault: 'Geben Sie eine Luftfeuchte zwischen 10 und 90 an.',
    humidityUnknown:
      'Wie die Saiten auf die Luftfeuchte antworten, ist noch nicht bekannt; die Tonhöhe lässt sich also nicht auf eine andere Luftfeuchte umrechnen.',
    summary: (count, from, to) =>
      `Mittlere Tonhöhe bei ${count} Besuchen vom ${from} bis ${to}, vorgefunden und hinterlassen, mit den Arbeiten. Die Zahlen lassen sich als CSV speichern.`,
    humiditySummary: (count) => `Luftfeuchte bei ${count} Besuchen.`,
    workTitle: 'Arbeiten',
  },
  map: {
    title: 'Alle Saiten, alle Besuche',
    note: 'Jahreszeit, Setzen und was das ganze Instrument tat, sind herausgerechnet. Was bleibt, ist jeder Saite eigen.',
    chartTitle:
      'Eigene Verstimmung jeder Saite in Cent: tiefer ist braun und schraffiert, höher ist blau und gepunktet',
    name: 'Karte der eigenen Verstimmung',
    kind: 'Zeigen',
    kinds: { 'added-up': 'seit dem ersten Besuch', 'each-interval': 'jeden Zeitraum für sich' },
    position: 'Saiten',
    label: 'Eine Saite im Umfang wählen',
    hint: 'Wählen Sie eine Saite, um unten ihre Jahre zu sehen: Klicken Sie sie an oder nehmen Sie hier die Pfeiltasten.',
    marks: {
      flag: 'beanstandeter Wirbel',
      bracket: 'nachgebender Bereich',
      section: 'Spreize oder Ende des Bassstegs',
    },
    cell: (string, visit, cents) => `${string}, ${visit}: ${cents}`,
    cellEmpty: (string, visit) => `${string}, ${visit}: nicht verglichen`,
    column: (string, cents) => `${string}, ${cents} bis zum letzten Besuch`,
    columnEmpty: (string) => `${string}, nie verglichen`,
    even: (cents) => `innerhalb ±\u2009${cents} oder innerhalb zweier Standardunsicherheiten`,
    range: (from, to) => `${from} bis ${to}`,
    below: (to) => `${to} oder tiefer`,
    above: (from) => `${from} oder höher`,
    flagged: 'beanstandet',
  },
  span: {
    title: 'Von Besuch zu Besuch',
    note: 'Oben: wie gemessen, mit dem Anteil von Jahreszeit und ganzem Instrument. Unten: was übrig bleibt. Balken und Band zeigen zwei Standardunsicherheiten.',
    from: 'Von',
    to: 'Bis',
    readTitle: 'Änderung in Cent, wie gemessen, und der Anteil von Jahreszeit und ganzem Instrument',
    whole: 'Jahreszeit und ganzes Instrument',
    ownTitle: 'Änderung in Cent, Jahreszeit und ganzes Instrument herausgerechnet',
    readName: 'Änderung',
    ownName: 'Eigene Änderung',
    summary: (count, from, to) =>
      `Änderung von ${count} Saiten vom ${from} bis ${to} in Cent, mit dem Anteil von Jahreszeit und ganzem Instrument.`,
    ownSummary: (count) =>
      `Was von der Änderung von ${count} Saiten übrig bleibt, in Cent, mit zwei Standardunsicherheiten.`,
    none: 'Keine Saite wurde an beiden Enden aller Zeiträume zwischen diesen Besuchen gemessen. Wählen Sie zwei Besuche, die näher beieinanderliegen.',
    gaps: (count) =>
      `${intervals(count)} dazwischen ${count === 1 ? 'hat' : 'haben'} keinen Ausgangspunkt und ${left(count)} weg.`,
    tunings:
      'Das Stimmen dazwischen ist herausgerechnet: Addiert wird nur, was zwischen einem Besuch und dem nächsten geschah.',
  },
  string: {
    title: 'Eine Saite',
    note: 'Balken zeigen zwei Standardunsicherheiten dessen, was sich seit ihrer ersten Messung angesammelt hat.',
    choose: 'Saite',
    previous: 'Saite links davon',
    next: 'Saite rechts davon',
    chartTitle: (string) => `Eigene Verstimmung von ${string} in Cent seit der ersten Messung`,
    name: (string) => `Die Jahre von ${string}`,
    offsets: 'eigene Verstimmung',
    line: 'ihr Nachgeben, mit zwei Standardunsicherheiten',
    rate: 'Nachgeben',
    probability: 'Wahrscheinlichkeit, dass sie nachgibt',
    possible: 'Ausgeschlossen',
    fasterThan: (speed) => `sinkt schneller als ${speed}, mit 95 %`,
    response: 'Antwort auf die Luftfeuchte',
    summary: (string, count, rate) =>
      `Eigene Verstimmung von ${string} bei ${count} Besuchen, in Cent, mit der Linie ihres Nachgebens: ${rate}.`,
    none: (string) =>
      `${string} wurde noch nicht an beiden Enden eines Zeitraums gemessen oder seither ersetzt. Ihre Jahre beginnen mit dem nächsten.`,
  },
  pins: {
    title: 'Wirbel und Bereiche',
    note: 'Negativ: Die Saite sinkt von selbst. Die sichersten stehen zuerst.',
    caption: 'Saiten, die vielleicht nachgeben',
    allCaption: 'Alle Saiten',
    all: (count) => `Alle ${count} Saiten`,
    none: 'Keine Saite gibt mit mehr als 30 % Wahrscheinlichkeit nach.',
    string: 'Saite',
    rate: 'Cent im Jahr',
    probability: 'Wahrscheinlichkeit',
    ruledOut: 'Ausgeschlossen jenseits von',
    judgement: 'Urteil',
    judgements: {
      flagged: 'gibt nach',
      doubtful: 'noch einmal ansehen',
      steady: 'beständig',
      unknown: 'zu wenig Belege',
    },
    more: 'Mehr',
    show: 'ihre Jahre',
    showLabel: (string) => `Die Jahre von ${string}`,
    zones: 'Bereiche, die gemeinsam sinken',
    zone: 'Töne',
    accelerating: 'Jedes Jahr schneller',
    yes: 'ja',
    no: 'nein',
    noZone: 'Kein Bereich benachbarter Töne sinkt gemeinsam.',
    outliers: (count) =>
      count === 1
        ? 'Ein einzelner Messwert, den keine langsame Ursache erklärt'
        : `${count} einzelne Messwerte, die keine langsame Ursache erklärt`,
    outliersCaption: 'Einzelne Messwerte, die keine langsame Ursache erklärt',
    visit: 'Besuch',
    cents: 'Cent',
    why: 'Warum',
    because: {
      'stood-off-once': (cents) =>
        `Beim Hinterlassen stand sie ${cents} neben ihren Nachbarn, und nur damals: falsch hingestimmt oder falsch aufgenommen.`,
      'found-off-once': {
        sharp: (cents) =>
          `Einmal ${cents} höher vorgefunden, als es die Nachbarn erwarten ließen: falsch aufgenommen oder von Hand verstellt.`,
        flat: (cents) =>
          `Einmal ${cents} tiefer vorgefunden, als es die Nachbarn erwarten ließen: falsch aufgenommen oder von Hand verstellt.`,
      },
      'left-off': (cents) =>
        `${cents} neben dem Stand hinterlassen, in dem diese Saite sonst steht: falsch hingestimmt oder falsch aufgenommen.`,
    },
  },
  humidity: {
    title: 'Antwort auf die Luftfeuchte',
    note: 'Wie weit sich eine Saite je % rF von selbst bewegt. Balken zeigen zwei Standardunsicherheiten.',
    chartTitle: 'Cent je % rF über den Umfang',
    name: 'Antwort auf die Luftfeuchte',
    summary: (count) =>
      `Antwort von ${count} Saiten auf die Luftfeuchte in Cent je % rF, mit zwei Standardunsicherheiten.`,
    unknown:
      'Noch nicht bekannt. Es braucht mindestens drei Zeiträume, an deren beiden Enden die Luftfeuchte notiert ist, und in einem davon eine Änderung um 3 % rF oder mehr.',
    middle: (response) => `In der Mitte des Umfangs bewegt sich eine Saite um ${response}.`,
    split: (difference) =>
      `Rechte Saiten antworten um ${difference} stärker als linke derselben Töne: Die Luftfeuchte zieht Chöre auseinander.`,
  },
  newWire: {
    title: 'Neuer Draht',
    since: (date) =>
      `Neu bezogen am ${date}. Neuer Draht dehnt sich und legt sich an seinen Biegungen an, und das ganze Instrument sinkt mit ihm: am meisten in den ersten Monaten, jeden Monat weniger, zwei bis drei Jahre lang. Das ist Setzen; keinem Wirbel wird es angelastet.`,
    notSeen:
      'Wie weit es gesunken ist, zeigt sich, sobald auf ein „hinterlassen“ beim nächsten Besuch ein „vorgefunden“ folgt. Im ersten Jahr ist öfter zu stimmen.',
    fellSoFar: (cents) => `Bisher sank es um ${cents}, wie gemessen, den Anteil des Wetters eingeschlossen.`,
    roseSoFar: (cents) => `Bisher stieg es um ${cents}, wie gemessen, den Anteil des Wetters eingeschlossen.`,
    toCome:
      'Es wird sich weiter setzen: Im ersten Jahr ist öfter zu stimmen; nehmen Sie jedes Mal beide Messreihen auf.',
    firstYear: (cents) => `Im ersten Jahr sank es um etwa ${cents}.`,
    falling: (speed) => `Beim letzten Besuch sank es noch, um etwa ${speed}; das kommende Jahr sollte weniger bringen.`,
    settled: (speed) => `Bis zum letzten Besuch hatte es sich gesetzt: Es sinkt um weniger als ${speed}.`,
  },
  forecast: {
    title: 'Was als Nächstes kommt',
    note: 'Wenn es in seinem Raum bleibt und nichts daran getan wird.',
    none: 'Es gibt noch nichts, wovon auszugehen wäre: Nehmen Sie eine Messreihe „hinterlassen“ auf.',
    limit: 'Fällig, wenn Saiten abweichen um',
    limitHint:
      'Quadratisches Mittel der Abweichungen aller Saiten von dem Stand, in dem sie hinterlassen wurden, in Cent. Auf diesem Gerät gemerkt.',
    limitLabel: (cents) => `${cents} im Mittel`,
    season: (date, kind, humidity) => `Nächste ${kind} Zeit: etwa ${date}, bei ${humidity}.`,
    kinds: { driest: 'trockenste', dampest: 'feuchteste' },
    movement: (median, rms, low, high) =>
      `Die mittlere Saite steht dann ${median} von dem Stand, in dem sie hinterlassen wurde; im Mittel weichen die Saiten um ${rms} ab (in zwei von drei Fällen zwischen ${low} und ${high}).`,
    due: (date) => `Ein Besuch lohnt sich: etwa ${date}`,
    between: (early, late) => `; in zwei von drei Fällen zwischen ${early} und ${late}.`,
    from: (early) => `; in zwei von drei Fällen frühestens ab ${early}.`,
    notDue: 'Die Grenze wird in den nächsten drei Jahren wohl nicht überschritten.',
    notDueBut: (early) =>
      `Die Grenze wird in den nächsten drei Jahren wohl nicht überschritten, könnte es aber ab ${early}.`,
    passed: 'Dieser Tag ist vorbei.',
    climateRecord: (count, mean, swing) =>
      `Aus ${count} Ablesungen der Luftfeuchte hier: ${mean} übers Jahr, ${swing} nach beiden Seiten.`,
    climateAssumed:
      'Zu wenige Ablesungen der Luftfeuchte übers Jahr: Angenommen wird ein geheizter Raum mit 45 ± 8 % rF, am trockensten im Februar, und die Unsicherheit ist groß.',
    responseAssumed:
      'Die Antwort der Saiten auf die Luftfeuchte ist die übliche, da sie für dieses Instrument noch nicht bekannt ist.',
    settling: 'Das Setzen des neuen Drahts ist darin, mit seinem jetzigen Tempo.',
    chartTitle: 'Abweichung der Saiten vom hinterlassenen Stand, quadratisches Mittel in Cent',
    name: 'Vorausschau',
    expected: 'Monat für Monat',
    point: (date, cents, low, high) => `${date}: ${cents} (${low} bis ${high})`,
    curve: 'erwartet, mit zwei von drei Fällen',
    limitMark: 'fällig',
    summary: (from, to) => `Erwartete Abweichung aller Saiten (quadratisches Mittel) von ${from} bis ${to}, in Cent.`,
  },
  torque: {
    title: 'Drehmoment gegen Nachgeben',
    note: 'Der letzte Besuch, bei dem Wirbel gelesen wurden. Ein lockerer Wirbel muss nicht nachgeben, und ein nachgebender nicht locker sein.',
    empty:
      'Noch wurde kein Drehmoment gelesen. Werte der Wirbel, in N·m, stehen hier neben ihrem Nachgeben: Messen Sie beim nächsten Besuch die zweifelhaften Wirbel.',
    open: 'Alle Drehmomente',
  },
  whatIf: {
    title: 'Was würde ich sehen, wenn …',
    note: 'Erfundene Klaviere mit einem bekannten Fehler durchlaufen dasselbe Urteil. In die Aufzeichnungen wird nichts geschrieben.',
    fault: 'Der Fehler',
    faults: { pins: 'einzelne Wirbel geben nach', zone: 'ein Bereich gibt nach', none: 'nichts fehlt' },
    pinCount: 'Wie viele Wirbel',
    noteCount: 'Wie viele Töne',
    rate: 'Wie schnell, Cent im Jahr',
    visits: 'Besuche im Jahr',
    noise: 'Messwerte',
    noises: { '0.5': 'doppelt so gut wie üblich', '1': 'wie üblich', '2': 'halb so gut wie üblich' },
    humidity: 'Luftfeuchte',
    humidities: { noted: 'notiert', unnoted: 'nicht notiert' },
    start: 'An 20 Klavieren versuchen',
    progress: (done, all) => `${done} von ${all} Klavieren beurteilt`,
    stop: 'Anhalten',
    failed: (detail) => `Der Versuch schlug fehl: ${detail}`,
    found: (half, most) => `Die Hälfte der Klaviere wird nach ${half} erkannt, neun von zehn nach ${most}.`,
    foundHalf: (half) =>
      `Die Hälfte der Klaviere wird nach ${half} erkannt; neun von zehn werden es innerhalb von acht Jahren nicht.`,
    foundSeldom: 'Weniger als die Hälfte der Klaviere wird innerhalb von acht Jahren erkannt.',
    steady: (share) => `Nach acht Jahren heißt es bei ${share} der gesunden Klaviere zu Recht „hält“.`,
    wrong: (share) => `Bei ${share} von ihnen ist bis dahin eine gesunde Saite beschuldigt.`,
    caption: (count) => `Anteile von ${count} erfundenen Klavieren`,
    years: 'Nach',
    foundShare: 'Erkannt',
    namedShare: 'Schadhafte Saiten, die genannt sind',
    warnsShare: 'Überhaupt gewarnt',
    holdsShare: '„Hält“ genannt',
    falseShare: 'Gesunde Saite beschuldigt',
    name: 'Was würde ich sehen, wenn',
  },
  line: {
    title: 'Stimmhaltung',
    waiting: 'Wird gerade beurteilt …',
    none: 'Noch ist nichts zu beurteilen.',
  },
};
