import type { roomTexts } from '../room.ts';
import type { Translated } from '../translation.ts';

export const germanRoomTexts: Translated<typeof roomTexts> = {
  title: 'Der Raum, bevor Sie beginnen',
  listening: 'Der Stille wird zugehört. Zwei Sekunden lang bitte kein Geräusch.',
  strikeOnce: 'Spielen Sie jetzt Ihren lautesten Ton: Daran wird der Pegel beurteilt.',
  noSignal: {
    sentence: 'Es kommt nichts an, nicht einmal der Raum.',
    remedy: 'Ist das Mikrofon stumm, oder hört der Browser auf ein anderes?',
  },
  noise: {
    quiet: (db) => `Der Raum ist still (${db} dB).`,
    audible: (db) => `Der Raum ist zu hören (${db} dB).`,
    loud: (db) => `Der Raum ist laut (${db} dB).`,
  },
  noiseRemedy: {
    quiet: {},
    audible: { remedy: 'Für die meisten Töne gut genug.' },
    loud: {
      remedy: 'Schließen Sie die Fenster, halten Sie Lüfter an oder rücken Sie das Mikrofon näher an die Saiten.',
    },
  },
  treble: (note) => ({
    sentence: `Sein Rauschen kann die Töne ab ${note} überdecken.`,
    remedy: 'Ein Mikrofon näher an den Saiten hört mehr von ihnen.',
  }),
  hum: (hz, db) => ({
    sentence: `Das Netz brummt bei ${hz} Hz (${db} dB).`,
    remedy:
      'Rücken Sie das Mikrofon und sein Kabel von Netzteilen und Lampen weg, oder betreiben Sie das Gerät aus dem Akku.',
  }),
  blowClipped: {
    sentence: 'Dieser Anschlag war übersteuert.',
    remedy: 'Stellen Sie den Eingang leiser oder rücken Sie das Mikrofon weiter weg.',
  },
  blowQuiet: (db) => ({
    sentence: `Dieser Anschlag erreichte nur ${db} dB: zu leise.`,
    remedy: 'Stellen Sie den Eingang lauter oder rücken Sie das Mikrofon näher heran.',
  }),
  blowGood: (db) => ({ sentence: `Dieser Anschlag erreichte ${db} dB: ein guter Pegel.` }),
};
