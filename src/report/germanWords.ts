/** The pages for owners and colleagues in German. */
import type { ReportWords } from './words.ts';

export const germanReportWords: ReportWords = {
  language: 'de',
  demonstration: 'Erfundenes Beispiel: Das Instrument, die Personen und alle Zahlen hat ein Programm erfunden.',
  string: ['', 'linke Saite', 'mittlere Saite', 'rechte Saite'],
  list: (names: readonly string[]): string =>
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} und ${names.at(-1)}`,
  andMore: (count: number) => `${count} weitere`,
  pageTitle: (instrument: string) => `${instrument}: wie es seine Stimmung gehalten hat`,
  upTo: (date: string) => `Stand: Besuch am ${date}`,
  noVisitYet: 'Es ist noch kein Besuch festgehalten.',
  instrument: {
    kinds: { grand: 'Flügel', upright: 'Klavier', square: 'Tafelklavier', other: 'Klavierinstrument' },
    built: (year: number) => `gebaut ${year}`,
    serial: (number: string) => `Nummer ${number}`,
    compass: (range: string, count: number) => `${range}, ${count} Töne`,
    pinBlock: 'Stimmstock',
    owner: 'Besitz',
    place: 'Standort',
  },
  verdict: {
    title: 'Das Urteil',
    titles: {
      holding: 'Es hält seine Stimmung',
      watch: 'Es sollte beobachtet werden',
      'giving way': 'Ein Teil gibt nach',
      'not enough evidence': 'Noch nicht genug Belege',
    },
    holding: (rate: string) =>
      `Die Saiten bleiben, wo sie hingestimmt werden. Dass eine Saite von selbst schneller als ${rate} im Jahr sinkt, ist ausgeschlossen: Wir sind zu 95\u00a0% sicher, dass es keine gibt.`,
    holdingSeason: 'Was sich bewegt, kommt mit der Jahreszeit und geht mit ihr zurück.',
    zone: (range: string, rate: string) => `Die Saiten von ${range} sinken von selbst, um etwa ${rate} im Jahr`,
    zoneOfOneNote: (note: string, rate: string) => `Die Saiten von ${note} sinken von selbst, um etwa ${rate} im Jahr`,
    faster: ', und von Jahr zu Jahr schneller',
    zoneCertainty: (probability: string) => `; wir sind zu ${probability} sicher.`,
    pins: (names: string, isOne: boolean) => `${names} ${isOne ? 'sinkt' : 'sinken'} von selbst, immer wieder.`,
    pin: (name: string, rate: string, probability: string) => `${name} (${rate} im Jahr, zu ${probability} sicher)`,
    notTheSeason: 'Die Jahreszeit erklärt es nicht: Die Bewegung des ganzen Instruments ist herausgerechnet.',
    suspects: (names: string, isOne: boolean) =>
      `${names} ${isOne ? 'ist' : 'sind'} stärker gesunken, als der Zufall erklärt, aber es ist noch nicht sicher.`,
    others: (count: number, rate: string) =>
      count === 1
        ? `Die andere Saite bleibt an ihrem Platz: Wir sind zu 95\u00a0% sicher, dass sie nicht schneller als ${rate} im Jahr sinkt.`
        : `Die anderen ${count} Saiten bleiben an ihrem Platz: Wir sind zu 95\u00a0% sicher, dass keine davon schneller als ${rate} im Jahr sinkt.`,
    open: (names: string, isOne: boolean) =>
      `Von ${names} lässt es sich noch nicht sagen, obwohl ${isOne ? 'sie vermutlich hält' : 'sie vermutlich halten'}; die nächsten Besuche werden es zeigen.`,
    noComparison:
      'Noch nie wurde gemessen, wie das Instrument verlassen und bei einem späteren Besuch vorgefunden wurde. Nur das zeigt, ob die Saiten bleiben.',
    tooLittle: (count: number, length: string) =>
      `Bisher ${count === 1 ? 'deckt ein Vergleich' : `decken ${count} Vergleiche`} zwischen Verlassen und Wiederfinden ${length} ab. Das ist zu wenig, um einen rutschenden Stimmwirbel von der Jahreszeit zu unterscheiden.`,
    couldHide: (rate: string) =>
      `Keine Saite fällt auf, doch ein Sinken um bis zu ${rate} im Jahr könnte sich noch in der Streuung verbergen.`,
    counted: (count: number, length: string) =>
      `Das beruht auf ${count === 1 ? 'einem Vergleich' : `${count} Vergleichen`} zwischen Verlassen und Wiederfinden, zusammen über ${length}.`,
    humidityUnknown:
      'Die Luftfeuchte wurde nicht oft genug notiert; die Jahreszeit wurde aus den Saiten selbst erschlossen.',
    newWire: {
      since: (date: string) =>
        `Am ${date} bekam es neuen Draht. Neuer Draht gibt zwei bis drei Jahre lang nach, am meisten in den ersten Monaten, und das ganze Instrument sinkt mit ihm: Das ist üblich und kein Mangel.`,
      toCome: 'Das meiste davon steht noch bevor: Im ersten Jahr ist öfter zu stimmen.',
      fellSoFar: (cents: string) => `Bisher ist es um ${cents} gesunken, den Anteil des Wetters eingeschlossen.`,
      roseSoFar: (cents: string) => `Bisher ist es um ${cents} gestiegen, den Anteil des Wetters eingeschlossen.`,
      firstYear: (cents: string) => `Im ersten Jahr sank es um etwa ${cents}.`,
      falling: (rate: string) => `Jetzt sinkt es um etwa ${rate} im Jahr; im nächsten Jahr sollte es weniger sein.`,
      settled: 'Jetzt hat sich der Draht gesetzt.',
    },
  },
  course: {
    title: 'Wie es seine Stimmung gehalten hat',
    chartSummary: (count: number, from: string, to: string, flattest: string, sharpest: string) =>
      `Bild von ${count === 1 ? 'einem Vergleich' : `${count} Vergleichen`} vom ${from} bis ${to}: Zusammengezählt bewegte sich die mittlere Saite zwischen ${flattest} und ${sharpest} gegenüber dem Anfang.`,
    humidityTitle: 'Luftfeuchte im Raum, % rF',
    sharper: 'höher',
    flatter: 'tiefer',
    cents: 'Cent',
    wholePiano: 'das ganze Instrument (mittlere Saite)',
    spread: 'vier von fünf Saiten',
    part: (range: string) => `Saiten ${range}`,
    explanation:
      'Was zwischen den Stimmungen geschah, zusammengezählt: wo die Saiten stünden, hätte niemand gestimmt. Die Jahreszeit kommt zurück; was rutscht, bleibt unten. 100 Cent: von einer Taste zur nächsten.',
    nothing:
      'Hier erscheint eine Linie, sobald bei einem Besuch das Verlassen und bei einem späteren das Wiederfinden gemessen ist.',
    humidityRange: (low: string, high: string) =>
      `Bei unseren Besuchen lag die Luftfeuchte zwischen ${low} und ${high}.`,
    noHumidity: 'Die Luftfeuchte wurde nicht notiert.',
    response: (change: string) =>
      `Wird die Luft um 10\u00a0% rF feuchter, geht eine typische Saite ${change}; trocknet sie, kehrt die Saite zurück.`,
    toSharper: (cents: string) => `etwa ${cents} höher`,
    toFlatter: (cents: string) => `etwa ${cents} tiefer`,
  },
  falseBeats: {
    title: 'Falsche Schwebungen',
    explanation:
      'Eine Saite mit falscher Schwebung schwankt für sich allein: Kein Stimmen macht sie rein. Arbeit an Steg, Stegstift oder Draht kann es.',
    when: 'Wann',
    count: 'Schwebend',
    judged: 'Von Saiten',
    before: (date: string) => `Davor, ${date}`,
    after: (date: string) => `Danach, ${date}`,
    latest: (date: string) => `Zuletzt, ${date}`,
    sameStrings: 'Vor und nach der Arbeit sind dieselben Saiten gezählt.',
    strings: (names: string) => `Jetzt: ${names}.`,
    none: 'Jetzt: keine.',
    notAssessable: (count: number) =>
      `${count === 1 ? 'Eine weitere Saite ließ' : `${count} weitere Saiten ließen`} sich nicht beurteilen: Der Ton ist vorbei, bevor sich eine langsame Schwebung zeigt, oder die Aufnahme gibt es nicht her.`,
    nothing: 'Es sind noch keine einzelnen Saiten aufgenommen.',
  },
  advice: {
    title: 'Was wir empfehlen',
    holding: 'Wie gewohnt stimmen. An Stimmwirbeln und Stimmstock ist nichts zu tun.',
    watch: (names: string) =>
      `Beim nächsten Besuch wieder beim Vorfinden und beim Verlassen messen und die Stimmwirbel von ${names} mit dem Drehmomentschlüssel prüfen.`,
    givingWay: (names: string) =>
      `Stimmwirbel und Stimmstock bei ${names} von einer Fachkraft untersuchen lassen, bevor dort höher gestimmt oder Draht gewechselt wird.`,
    notEnough:
      'Bei jedem der nächsten Besuche beim Vorfinden und beim Verlassen messen lassen: Nur das schafft Klarheit.',
    steadierRoom: (low: string, high: string) =>
      `Die Luftfeuchte im Raum gleichmäßiger halten: Zwischen ${low} und ${high} kommt die meiste Bewegung vom Wetter.`,
    planned: (work: string) => `Beschlossen und noch nicht getan: ${work}.`,
    decisions: {
      leave: 'so lassen',
      'bridge work': 'Arbeit am Steg',
      'replace wire': 'neuer Draht',
      'replace pin': 'neuer Stimmwirbel',
      'look again': 'noch einmal ansehen',
    },
    plannedWork: (choice: string, strings: string) => `${choice}: ${strings}`,
    comeBackBetween: (from: string, to: string) =>
      `Nächste Stimmung: Nach seinem bisherigen Verhalten ist es wahrscheinlich zwischen ${from} und ${to} verstimmt.`,
    comeBackIn: (month: string) =>
      `Nächste Stimmung: Nach seinem bisherigen Verhalten ist es wahrscheinlich im ${month} verstimmt.`,
    comeBackFrom: (from: string) => `Nächste Stimmung: Nach seinem bisherigen Verhalten wohl nicht vor ${from} nötig.`,
    comeBackLate: (years: string) => `Es bleibt wahrscheinlich länger als ${years} gestimmt.`,
    assumption: 'Der Jahresgang dieses Raums ist noch nicht gut genug bekannt; ein üblicher wurde angenommen.',
  },
  work: {
    title: 'Was wann getan wurde',
    kinds: {
      restrung: 'Neu bezogen',
      'string-replaced': 'Saite ersetzt',
      'pin-replaced': 'Stimmwirbel ersetzt',
      'block-work': 'Arbeit am Stimmstock',
      moved: 'Umgestellt',
      tuned: 'Gestimmt',
    },
    whole: 'das ganze Instrument',
    nothing: 'Es ist keine Arbeit eingetragen.',
    remark: 'Notiert',
  },
  photographs: { title: 'Fotos', uncaptioned: 'Foto' },
  remark: {
    title: 'Bemerkung der Fachkraft',
    note: 'Von der Fachkraft geschrieben; kein Ergebnis der Messungen.',
  },
  cautions: {
    title: 'Bitte beachten',
    tension:
      'In einem Klavier herrschen viele Tonnen Saitenzug, und alte Platten reißen. Höherstimmen oder ein anderer Bezug kann bei einem alten Instrument Saiten, Platte oder Stimmstock brechen lassen; brechender Draht verletzt Augen und Hände.',
    judgement:
      'Die Zahlen stützen das Urteil einer Fachkraft und ersetzen es nie. Örtliche Vorschriften und zugelassene Fachleute gehen vor.',
  },
  hearing: {
    title: (note: string, instrument: string) => `${note}, ${instrument}`,
    subtitle: 'Derselbe Ton bei zwei Besuchen, gleich laut.',
    sound: (date: string, stage: string) => `${date}, ${stage}`,
    stages: { 'as-found': 'wie vorgefunden', 'as-left': 'wie verlassen' },
    playBoth: 'Nacheinander abspielen',
    seconds: 'Sekunden',
    decibels: 'dB',
    beat: (rate: string, depth: string) => `${rate}, ${depth} tief`,
    noBeat: (partial: number) => `keine Schwebung auf Teilton ${partial} gefunden`,
    partial: (partial: number) =>
      `Die Linie ist die Stärke von Teilton ${partial} von Augenblick zu Augenblick, in Dezibel unter der lautesten Stelle: Wo er schwebt, geht die Linie auf und ab. Darunter steht der Umriss des ganzen Klangs.`,
    loudness:
      'Beide Klänge sind in der ersten Sekunde nach dem Anschlag auf gleiche Energie gebracht, ohne Gewichtung nach der Frequenz, und haben weiche Enden; sonst ist nichts verändert.',
    summary: (one: string, other: string, partial: number) =>
      `Stärke von Teilton ${partial} im Lauf der Zeit, für ${one} und für ${other}, untereinander.`,
  },
  long: {
    title: (instrument: string) => `${instrument}: die ausführlichen Aufzeichnungen`,
    instrumentRemark: 'Bemerkung',
    zones: 'Bereiche, die gemeinsam sinken',
    outliers: 'Einzelne Messungen, die keine langsame Ursache erklärt',
    notes: 'Töne',
    note: 'Ton',
    string: 'Saite',
    unison: 'ganzer Chor',
    slip: 'Rutschen, Cent im Jahr',
    probability: 'Wahrscheinlichkeit',
    course: 'Verlauf',
    faster: 'jedes Jahr schneller',
    steady: 'gleichmäßig',
    date: 'Datum',
    departure: 'Abweichung',
    reason: 'Grund',
    because: {
      'stood-off-once': (cents: string) =>
        `stand beim Hinterlassen ${cents} neben ihren Nachbarn, und nur damals: falsch hingestimmt oder falsch aufgenommen`,
      'found-off-once': {
        sharp: (cents: string) =>
          `einmal ${cents} höher vorgefunden, als es die Nachbarn erwarten ließen: falsch aufgenommen oder von Hand verstellt`,
        flat: (cents: string) =>
          `einmal ${cents} tiefer vorgefunden, als es die Nachbarn erwarten ließen: falsch aufgenommen oder von Hand verstellt`,
      },
      'left-off': (cents: string) =>
        `${cents} neben dem Stand hinterlassen, in dem diese Saite sonst steht: falsch hingestimmt oder falsch aufgenommen`,
    },
    slips: 'Was jede Saite für sich tut',
    slipChart: 'Rutschen in Cent im Jahr (Striche: zwei Standardunsicherheiten; Dreiecke: auffällig)',
    slipTable: 'Rutschen je Saite: Jahreszeit, Setzen und gemeinsamer Gang herausgerechnet, eine Standardunsicherheit',
    judgement: 'Urteil',
    flagged: 'rutscht',
    response: 'Wie die Saiten auf Luftfeuchte antworten',
    responseChart: 'Antwort in Cent je % rF (Striche: zwei Standardunsicherheiten)',
    comparisons: 'Von jedem Verlassen bis zum nächsten Vorfinden',
    comparisonNote:
      'Punkte sind die gemessenen Saiten, Striche zwei Standardunsicherheiten des Messens; die gestrichelte Linie ist, was Jahreszeit, Setzen und gemeinsamer Gang erklären. Punktierte Linien: Ende des Basssteges und Plattenstreben.',
    fromTo: (from: string, to: string) => `${from} bis ${to}`,
    changeTable: 'Änderung in Cent, nach dem Tag der Messung beim Vorfinden',
    latest: 'Die Saiten, wie zuletzt gemessen',
    inharmonicityChart: 'Inharmonizität B',
    lifeChart: 'Wie lange ein Ton lebt, in Sekunden für 60 dB',
    latestTable: 'Neueste Messung jeder Saite, mit einer Standardunsicherheit',
    offset: 'Abstand von gleichstufiger Stimmung',
    inharmonicity: 'B',
    life: 'Leben',
    beats: 'Schwebungen',
    beatKinds: {
      none: 'keine',
      'false beat': 'falsche Schwebung',
      unison: 'Chor',
      undetermined: 'nicht bestimmbar',
    },
    visits: 'Besuche',
    by: 'Von',
    humidity: 'Luftfeuchte',
    temperature: 'Temperatur',
    pitchStandard: 'Stimmton',
    asFound: 'Saiten vorgefunden',
    asLeft: 'Saiten verlassen',
    movement: 'Mittlere Bewegung',
    remark: 'Bemerkung',
    what: 'Was',
    torques: 'Drehmoment der Stimmwirbel',
    torque: 'Drehmoment, N·m',
    direction: 'Gedreht',
    directions: { sharpwards: 'nach oben', flatwards: 'nach unten', 'not noted': 'nicht notiert' },
    trials: 'Versuche am Steg',
    trialKinds: {
      'hold the bridge pin': 'Stegstift gehalten',
      'press the wire at the bridge': 'Draht am Steg gedrückt',
      'tap the wire to the bridge': 'Draht an den Steg geklopft',
      'seat the wire at the other end': 'Draht am anderen Ende angelegt',
      'take out its twist': 'Drall herausgenommen',
      other: 'anderes',
    },
    takes: 'Aufnahmen',
    beforeAfter: (before: number, after: number) => `${before} vorher, ${after} nachher`,
    decisions: 'Entscheidungen',
    decidedOn: 'Entschieden am',
    decision: 'Entscheidung',
    doneOn: 'Getan am',
    notYet: 'noch nicht',
  },
  method: {
    title: 'Wie gemessen wurde',
    readingCount: (count: number) => `${count} ${count === 1 ? 'Messung' : 'Messungen'}`,
    visitCount: (count: number) => (count === 1 ? 'einem Besuch' : `${count} Besuchen`),
    fromTo: (visits: string, from: string, to: string) =>
      from === to ? `${visits} (${from})` : `${visits} vom ${from} bis ${to}`,
    readings: (readings: string, visits: string, uncertainty: string) =>
      `${readings} bei ${visits}: Jeder Ton wurde aufgenommen, und die Frequenzen seiner Teiltöne wurden gemessen. Die Hälfte der Messungen ist sicherer als ± ${uncertainty} (eine Standardunsicherheit).`,
    readingsOnly: (readings: string, visits: string) =>
      `${readings} bei ${visits}: Jeder Ton wurde aufgenommen, und die Frequenzen seiner Teiltöne wurden gemessen.`,
    drift:
      'Bewegung reicht vom Verlassen bei einem Besuch bis zum Vorfinden beim nächsten. Was ein Steg gemeinsam tut (Jahreszeit, Temperatur, Setzen), ist herausgerechnet; Rutschen ist, was eine Saite darüber hinaus tut, nach unten, immer wieder.',
    certainty: (threshold: string) =>
      `Ein Rutschen von ${threshold} im Jahr gilt als bedeutsam. „95\u00a0%“ heißt: Von zwanzig solchen Aussagen kann sich eine als falsch erweisen.`,
    falseBeats:
      'Eine falsche Schwebung zählt, wo eine Saite allein oder hinter einem Filzstreifen nur auf einigen Teiltönen schwebte; Schwebungen zwischen Saiten zählen nicht.',
    leftOut: (count: number) =>
      `${count === 1 ? 'Eine Aufnahme wurde' : `${count} Aufnahmen wurden`} weggelassen: zu verrauscht oder übersteuert, oder niemand notierte, welche Saite klang.`,
    made: 'Stillpin hat diese Seite aus den Aufzeichnungen geschrieben; ihre Zahlen lassen sich nicht eintippen.',
  },
};
