import type { clockTexts } from '../clock.ts';
import type { Translated } from '../translation.ts';

export const germanClockTexts: Translated<typeof clockTexts> = {
  title: 'Den Takt dieses Mikrofons prüfen',
  checkLink: 'Den Takt dieses Mikrofons prüfen',
  reference: {
    title: 'Die Referenz',
    note: 'Die Takte von Tongeräten liegen gewöhnlich einige zehn ppm daneben. Ein schneller Takt lässt jeden Ton zu tief erscheinen, alle gleich; 100 ppm sind 0,17 Cent.',
    kind: 'Was klingt',
    kinds: { tone: 'Ein Referenzton aus einem eigenen Gerät', fork: 'Eine Stimmgabel' },
    frequency: 'Seine Frequenz',
    uncertainty: 'Wie sicher das ist (eine Standardunsicherheit)',
    uncertaintyHint: {
      tone: 'Was der Hersteller angibt.',
      fork: 'Gabeln werden als auf einige Zehntel Hertz genau verkauft.',
    },
    statedAt: 'Diese Frequenz hat sie bei',
    temperature: 'Wie warm sie jetzt ist',
    temperatureHint:
      'Eine Stahlgabel fällt um 0,011 % je Grad Celsius, das sind 0,19 Cent: Lassen Sie sie eine Weile im Raum liegen und halten Sie sie nur am Stiel.',
    toneCaution:
      'Der Ton darf nicht aus dem Lautsprecher dieses Geräts kommen: Er würde von eben dem Takt erzeugt, den er prüfen soll.',
    faults: {
      'frequency-out-of-range': 'Geben Sie die Frequenz als Zahl von 100 bis 4000 an.',
      'uncertainty-out-of-range': 'Geben Sie die Unsicherheit als Zahl von 0 bis 10 an.',
      'temperature-out-of-range': 'Geben Sie die Temperatur als Zahl von −10 bis 45 an.',
      'temperature-not-in-fahrenheit': 'Geben Sie die Temperatur als Zahl von 14 bis 113 an.',
    },
  },
  listen: {
    title: 'Zuhören',
    note: 'Wenn es klingt, muss nichts gedrückt werden.',
    action: 'Darauf hören',
    again: 'Noch einmal hören',
    stop: 'Anhalten',
    asking: 'Das Mikrofon wird erfragt. Beantworten Sie die Frage des Browsers, um weiterzumachen.',
    waiting:
      'Es wird zugehört. Lassen Sie es nahe am Mikrofon mindestens zehn Sekunden klingen, wenn möglich fünfzehn.',
    heard: (seconds) => `${seconds} s gehört …`,
    progress: 'Gehörte Sekunden',
    faults: {
      'too-short': 'Es klang nicht lange genug. Lassen Sie es mindestens zehn Sekunden klingen.',
      'not-heard': 'In der Nähe dieser Frequenz war nichts zu hören. Ist es die richtige, und ist es nah genug?',
      unsteady:
        'Es klang nicht gleichmäßig: Es schwebte, wurde berührt oder bewegt, oder Ton ging verloren. Stellen Sie es auf etwas, das nicht klappert, und lassen Sie es noch einmal klingen.',
    },
  },
  result: {
    title: 'Der Takt',
    fast: 'zu schnell',
    slow: 'zu langsam',
    sentence: (ppm, word) => `Der Takt dieses Mikrofons geht ${ppm} ${word}.`,
    notTold: (ppm, word) => `Eine Abweichung ist nicht auszumachen: ${ppm} ${word}.`,
    pitch: (cents, word) => `Tonhöhen erscheinen ${cents} ${word}, bei allen Tönen gleich.`,
    flat: 'zu tief',
    sharp: 'zu hoch',
    even: 'Das liegt innerhalb der Unsicherheit. Eine sicherere Referenz würde mehr sagen.',
    kept: (name) =>
      `Für „${name}“ festgehalten. Messreihen mit diesem Mikrofon vermerken das von jetzt an; keine Zahl wird dadurch geändert.`,
    unnamed: 'Der Browser gibt diesem Mikrofon keinen Namen; Messreihen lassen sich ihm nicht zuordnen.',
  },
  earlier: {
    title: 'Frühere Prüfungen',
    caption: 'Prüfungen von Mikrofonen an diesem Gerät, die letzte zuerst',
    when: 'Wann',
    microphone: 'Mikrofon',
    against: 'Gegen',
    offset: 'Takt',
    pitch: 'Tonhöhen erscheinen',
    fork: (hz, celsius) => `Gabel, ${hz} bei ${celsius}`,
    tone: (hz) => `Ton, ${hz}`,
  },
  survey: {
    title: 'Der Takt des Mikrofons',
    note: 'Er verschiebt alle Töne gleich.',
    againstSystem: (ppm, word, cents) =>
      `Während der Aufnahme ging er gegen die Uhr dieses Geräts ${ppm} ${word}, das sind ${cents}. Diese Uhr kann selbst einige zehn ppm abweichen.`,
    noEvidence:
      'Es gibt nicht genug Belege dafür, wie er gegen die Uhr dieses Geräts ging; eine halbe Minute Zuhören ist das Mindeste.',
    calibrated: (when, against, ppm, word) =>
      `Am ${when} wurde er gegen eine Referenz (${against}) geprüft und ging ${ppm} ${word}.`,
    reads: (cents, word) =>
      `Tonhöhen erscheinen also ${cents} ${word}; die Zahlen oben stehen wie gemessen, nicht berichtigt.`,
    notTold: 'Das liegt innerhalb der Unsicherheit: Die Tonhöhen können stimmen, wie sie sind.',
    notCalibrated: 'Er war damals nicht gegen eine Referenz geprüft worden.',
    kinds: { tone: 'Referenzton', fork: 'Stimmgabel' },
  },
};
