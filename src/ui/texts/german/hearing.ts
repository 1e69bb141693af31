import type { hearingTexts } from '../hearing.ts';
import type { Translated } from '../translation.ts';

export const germanHearingTexts: Translated<typeof hearingTexts> = {
  link: 'Anhören',
  title: 'Anhören',
  subtitle: 'Derselbe Ton bei zwei Besuchen, nacheinander, gleich laut.',
  empty:
    'Noch ist von keinem Ton bei zwei Messreihen der Klang aufgehoben. Klänge werden aufgehoben, wenn „Klang aufheben“ zu Beginn einer Messreihe eingeschaltet ist; zwei Messreihen damit, und ein Ton ist damals und heute zu hören.',
  choice: {
    title: 'Was zu hören sein soll',
    note: 'Angeboten werden nur Töne, deren Klang bei zwei oder mehr Messreihen aufgehoben wurde.',
  },
  note: 'Ton und Saite',
  first: 'Zuerst',
  second: 'Dann',
  partial: 'Teilton in der Zeichnung',
  partialChoice: (number, isBeating) => `Teilton ${number}${isBeating ? ', schwebt' : ''}`,
  noteChoice: (note, string, count) => `${note}${string === '' ? '' : `, ${string}`} (${count} Klänge)`,
  listen: { title: 'Hören' },
  playBoth: 'Nacheinander abspielen',
  playFirst: 'Den ersten abspielen',
  playSecond: 'Den zweiten abspielen',
  stop: 'Anhalten',
  save: 'Als Datei speichern',
  fileName: (note) => `${note} damals und heute`,
  preparing: 'Die Klänge werden vorbereitet …',
  silent: 'Einer der beiden Klänge ist stumm und lässt sich nicht auf die Lautstärke des anderen bringen.',
  unreadable: (reason) => `Dieser Klang lässt sich nicht abspielen: ${reason}`,
  nowPlaying: (which) => `Zu hören: ${which}`,
};
