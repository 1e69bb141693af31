import type { commonTexts } from '../common.ts';
import type { Translated } from '../translation.ts';

const records = (count: number) => (count === 1 ? 'Ein Datensatz' : `${count} Datensätze`);

export const germanCommonTexts: Translated<typeof commonTexts> = {
  productName: 'Stillpin',
  skipToContent: 'Zum Inhalt springen',
  trail: 'Wo Sie sind',
  onThisPage: 'Auf dieser Seite',
  workshop: 'Werkstatt',
  loading: 'Die Aufzeichnungen werden gelesen …',
  undo: 'Rückgängig',
  putAway: 'Weglegen',
  save: 'Speichern',
  cancel: 'Abbrechen',
  change: 'Ändern',
  close: 'Schließen',
  invented: 'Erfundene Daten',
  inventedHint: 'Aus der Vorführwerkstatt: Das hat niemand gemessen.',
  cautionWord: 'Vorsicht:',
  faultWord: 'Nicht geschehen:',
  theme: {
    label: 'Helligkeit',
    device: 'Wie das Gerät',
    light: 'Hell',
    dark: 'Dunkel',
  },
  settings: {
    title: 'Einstellungen',
    language: 'Sprache · Language',
    languages: { device: 'Wie das Gerät · as the device', en: 'English', de: 'Deutsch' },
    length: 'Längen und Durchmesser',
    lengths: { mm: 'Millimeter', in: 'Zoll' },
    temperature: 'Temperatur',
    temperatures: { '°C': 'Grad Celsius', '°F': 'Grad Fahrenheit' },
    torque: 'Drehmoment der Wirbel',
    torques: { N·m: 'Newtonmeter', in·lb: 'Inch-pounds' },
    note: 'Das gilt nur auf diesem Gerät; Aufzeichnungen und Dateien bleiben metrisch. Die Seite wird damit neu geladen.',
    use: 'So verwenden',
    busy: 'Sprache und Einheiten lassen sich wählen, sobald Sie diese Seite verlassen: Was hier gerade läuft, würde abgebrochen.',
  },
  tension:
    'In einem Klavier stehen viele Tonnen Saitenzug, und alte Platten reißen. Wer an einem alten Instrument den Stimmton anhebt oder den Bezug ändert, kann Saiten, Stimmstock oder Platte zerstören; reißende Saiten verletzen Augen und Hände. Diese Zahlen stützen das Urteil einer Fachkraft und ersetzen es nie.',
  stage: { 'as-found': 'vorgefunden', 'as-left': 'hinterlassen' },
  strings: {
    'centre strings': 'Mittlere Saiten, hinter einem Filzstreifen',
    'open unisons': 'Offene Chöre',
    'single strings': 'Einzelne Saiten, eine nach der anderen',
  },
  stringPosition: ['ganzer Chor', 'linke Saite', 'mittlere Saite', 'rechte Saite'],
  noteStates: { missing: 'fehlt', kept: 'behalten', doubtful: 'zweifelhaft', skipped: 'übergangen' },
  noteStrip: (kept, doubtful, all) =>
    `${kept} von ${all} Tönen behalten, ${doubtful} zweifelhaft, ${all - kept - doubtful} ohne Aufnahme`,
  write: {
    'storage-full':
      'Auf diesem Gerät ist kein Platz mehr; der letzte Eintrag wurde nicht gespeichert, alles zuvor Gespeicherte ist sicher. Schaffen Sie Platz (andere Seiten, Downloads, Fotos) und wiederholen Sie den Schritt.',
    closed:
      'Die Aufzeichnungen wurden geschlossen, vielleicht weil in einem anderen Tab eine neuere Fassung geöffnet wurde. Alles Gespeicherte ist sicher. Laden Sie diese Seite neu und wiederholen Sie den letzten Schritt.',
    'not-a-record': 'Dieser Eintrag ist in sich nicht stimmig und wurde nicht gespeichert:',
    failed: 'Der Eintrag wurde nicht gespeichert. Der Browser meldet:',
  },
  newVersion: {
    ready: 'Eine neue Fassung liegt bereit.',
    load: 'Jetzt laden',
    later: 'Später',
  },
  otherPages: {
    word: 'Eine andere Seite:',
    blocked:
      'Dieses Programm ist in einem anderen Tab mitten in etwas: einer Messreihe oder einem Formular. Beenden Sie es dort oder schließen Sie jenen Tab; diese Seite macht dann von selbst weiter.',
    closedTitle: 'In einem anderen Tab wurde eine neuere Fassung geöffnet',
    closed:
      'Sie hat die Aufzeichnungen übernommen. Alles Gespeicherte ist sicher. Laden Sie diese Seite neu, um weiterzumachen.',
    surveyTaken:
      'Diese Messreihe läuft in einem anderen Tab. Zwei Seiten dürfen nicht in dieselbe Messreihe schreiben. Machen Sie dort weiter oder schließen Sie jenen Tab; diese Seite macht dann von selbst weiter.',
  },
  unavailable: {
    title: 'Die Aufzeichnungen lassen sich nicht öffnen',
    again: 'Seite neu laden',
    next: 'Nichts wurde gelöscht. Bleibt es dabei: andere Tabs mit dieser Seite schließen, das private Fenster verlassen oder den Browser neu starten.',
  },
  readFault: (detail) => `Die Aufzeichnungen konnten nicht gelesen werden: ${detail} Laden Sie die Seite neu.`,
  broken: {
    title: 'Diese Seite ist gestolpert',
    what: 'Ein Fehler im Programm hat diese Ansicht angehalten. Alles Gespeicherte ist sicher: Aufzeichnungen werden in dem Augenblick geschrieben, in dem sie behalten werden.',
    again: 'Diese Ansicht noch einmal versuchen',
    detail: 'Was das Programm meldet',
  },
  gone: {
    title: 'Unter dieser Adresse steht nichts',
    what: 'Der Verweis ist vielleicht alt, verschrieben, oder er gehört zu den Aufzeichnungen eines anderen Geräts.',
    back: 'Zur Werkstatt',
  },
  damaged: (count) =>
    `${records(count)} ${count === 1 ? 'ist' : 'sind'} nicht lesbar und ${count === 1 ? 'fehlt' : 'fehlen'} hier. Nichts wurde gelöscht.`,
};
