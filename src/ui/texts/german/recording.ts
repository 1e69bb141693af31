import type { recordingTexts } from '../recording.ts';
import type { InTranslation } from '../translation.ts';

export const germanRecordingTexts: InTranslation<typeof recordingTexts> = {
  title: (stage, strings) => `Aufnahme, ${stage}: ${strings}`,
  heard: 'Gehört',
  cents: 'Cent',
  controls: 'Was als Nächstes geschehen soll',
  again: 'Noch einmal versuchen',
  noSound: 'Kein Ton:',
  nothingYet: 'Spielen Sie den ersten Ton',
  next: 'Als Nächstes',
  nextWord: 'der nächste',
  allDone: 'Jeder Ton hat eine Aufnahme',
  progress: (done, all) => `${done} von ${all}`,
  progressLabel: 'Töne mit Aufnahme',
  writing: 'wird gespeichert …',
  struck: 'Anschlag gehört, hört zu …',
  listening: 'hört zu',
  before: (sentence) => `Davor: ${sentence}`,
  kept: 'behalten',
  keptDoubtful: 'gespeichert, zweifelhaft',
  notKept: 'nicht gespeichert',
  asideKept: 'beiseitegelegt; die frühere Aufnahme ist besser',
  start: 'Zuhören beginnen',
  startHint: 'Der Browser wird nach dem Mikrofon fragen. Erlauben Sie es für diese Seite.',
  resume: 'Weiter zuhören',
  asking: 'Das Mikrofon wird erfragt. Beantworten Sie die Frage des Browsers, um weiterzumachen.',
  paused: 'Angehalten. Es wird nichts gehört.',
  takesSafe: (count) =>
    `${count === 1 ? 'Eine Aufnahme ist' : `${count} Aufnahmen sind`} gespeichert und in Sicherheit.`,
  buttons: {
    back: 'Zurück',
    skip: 'Übergehen',
    pause: 'Pause',
    undo: 'Rückgängig',
    another: 'Das war ein anderer Ton',
    finish: 'Abschließen',
  },
  level: {
    label: 'Pegel',
    silent: 'Stille',
    quiet: 'zu leise',
    good: 'gut',
    clipping: 'übersteuert',
    fading: 'verklingt',
  },
  change: {
    label: 'Änderung seit der letzten Messung',
    flatter: { 'as-found': 'tiefer als vorgefunden am', 'as-left': 'tiefer als hinterlassen am' },
    sharper: { 'as-found': 'höher als vorgefunden am', 'as-left': 'höher als hinterlassen am' },
    asBefore: { 'as-found': 'wie vorgefunden am', 'as-left': 'wie hinterlassen am' },
    strayFlat: (cents) => `${cents} Cent tiefer als seine Nachbarn`,
    straySharp: (cents) => `${cents} Cent höher als seine Nachbarn`,
    again: ': noch einmal spielen?',
    confirmed: ', zweimal gleich',
  },
  desk: {
    title: 'Klick und Fußschalter',
    click: 'Ein leiser Klick, wenn eine brauchbare Aufnahme gespeichert ist',
    clickHint:
      'Aus, solange Sie ihn nicht wollen, denn das Mikrofon könnte ihn hören und für ein Klopfen halten. Verwenden Sie Kopfhörer oder einen leise gestellten, vom Mikrofon entfernten Lautsprecher.',
    foot: 'Fußschalter',
    footHint:
      'Ein Fußschalter tippt eine Taste, meist eine von diesen. Eine belegte Taste wirkt überall auf dieser Seite und drückt keinen Knopf.',
    keys: {
      ' ': 'Leertaste',
      Enter: 'Eingabe',
      PageUp: 'Bild auf',
      PageDown: 'Bild ab',
      ArrowLeft: 'Pfeil links',
      ArrowRight: 'Pfeil rechts',
    },
    actions: { none: 'Nichts', back: 'Zurück', skip: 'Übergehen', pause: 'Pause oder weiter', undo: 'Rückgängig' },
  },
  allNotes: 'Alle Töne',
  allNotesHint:
    'Berühren Sie einen Ton mit Aufnahme für seine Zahlen; berühren Sie einen ohne, um ihn als Nächsten zu spielen.',
  figuresOf: (note) => `Zahlen von ${note}`,
  playAgain: (note) => `${note} gleich noch einmal spielen`,
  correct: {
    title: 'Welcher Ton war es?',
    current: (note) => `Er wurde für ${note} gehalten.`,
    pick: 'Berühren Sie den richtigen Ton.',
    takenFor: 'gehalten für',
    done: (from, to) => `Die Aufnahme von ${from} gehört jetzt zu ${to}.`,
  },
  screenMayDarken:
    'Der Browser hält diesen Bildschirm nicht wach. Stellen Sie das Gerät so ein, dass es einige Minuten an bleibt, oder berühren Sie die Seite hin und wieder.',
  processing: (names) =>
    `Der Browser hat ${names} für dieses Mikrofon nicht abgeschaltet. Das verbiegt Pegel, Abklingen und Tonhöhe; diese Aufnahmen sind weniger wert. Verwenden Sie wenn möglich einen anderen Browser oder ein anderes Mikrofon.`,
  settings: {
    echoCancellation: 'die Echounterdrückung',
    noiseSuppression: 'die Rauschunterdrückung',
    autoGainControl: 'die automatische Aussteuerung',
    channelCount: 'das Mischen der Kanäle',
  },
  hole: 'Einen Augenblick fehlte der Ton. Eine Aufnahme, in die das fällt, wird als zweifelhaft gekennzeichnet; spielen Sie den Ton dann noch einmal.',
  faults: {
    'microphone-refused':
      'Das Mikrofon wurde verweigert. Erlauben Sie es für diese Seite in den Einstellungen des Browsers (das Zeichen neben der Adresse) und versuchen Sie es erneut.',
    'no-microphone':
      'Es wurde kein Mikrofon gefunden. Stecken Sie eines ein oder schalten Sie es an und versuchen Sie es erneut.',
    'microphone-busy': 'Ein anderes Programm hält das Mikrofon. Schließen Sie es und versuchen Sie es erneut.',
    'not-supported':
      'Dieser Browser gibt hier keinen Zugang zu einem Mikrofon. Öffnen Sie die Seite über https oder auf localhost, in einem aktuellen Browser.',
    'audio-blocked': 'Der Browser hält den Ton zurück, bis die Seite berührt wird. Drücken Sie den Knopf noch einmal.',
  },
  lost: {
    'microphone-ended': 'Das Mikrofon hörte auf, oder es wurde weggenommen.',
    'device-gone': 'Das Mikrofon wurde abgezogen. Stecken Sie es wieder ein und machen Sie weiter.',
    'microphone-muted': 'Das Gerät hat das Mikrofon stummgeschaltet. Es geht weiter, sobald das aufgehoben ist.',
    'audio-interrupted': 'Das Gerät hat den Ton unterbrochen, vielleicht für einen Anruf. Danach geht es weiter.',
  },
  programFault: 'Das Messen hielt wegen eines Fehlers im Programm an. Drücken Sie, um wieder zuzuhören.',
  finished: 'Die Messreihe ist abgeschlossen.',
  undone: (note) => `Die Aufnahme von ${note} wurde beiseitegelegt.`,
  undoneStep: 'Der letzte Schritt wurde zurückgenommen.',
  storeAgain: 'Noch einmal speichern',
  unstored: (count) =>
    `${count === 1 ? 'Eine Aufnahme ist' : `${count} Aufnahmen sind`} noch nicht gespeichert und nur auf dieser Seite vorhanden. Lassen Sie sie offen, bis es so weit ist.`,
};
