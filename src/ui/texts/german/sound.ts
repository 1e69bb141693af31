import type { soundTexts } from '../sound.ts';
import type { Translated } from '../translation.ts';

const takes = (count: number) => (count === 1 ? 'eine Aufnahme' : `${count} Aufnahmen`);
const takesWere = (count: number) => (count === 1 ? 'Eine Aufnahme wurde' : `${count} Aufnahmen wurden`);

export const germanSoundTexts: Translated<typeof soundTexts> = {
  title: 'Klang',
  kept: {
    label: 'Wie viel Klang von jeder Aufnahme aufgehoben wird',
    choices: { 'first-seconds': 'Die ersten 4 Sekunden', whole: 'Alles', none: 'Nichts' },
    note: (size) =>
      `Mit dem Klang können Sie einen Ton in zehn Jahren noch einmal hören und mit einem besseren Programm noch einmal messen. Vier Sekunden von 88 Tönen brauchen etwa ${size}. Die Wahl gilt auf diesem Gerät, für Aufnahmen von jetzt an.`,
    stored: (size) => `Klang auf diesem Gerät: ${size}.`,
    open: (choice) => `Klang aufheben: ${choice.charAt(0).toLowerCase()}${choice.slice(1)}`,
  },
  dropped: {
    'storage-full':
      'Dieses Gerät ist fast voll; der Klang der letzten Aufnahme wurde nicht aufgehoben. Ihre Zahlen sind gespeichert, und die der nächsten werden es auch.',
    other: (detail) => `Der Klang der letzten Aufnahme wurde nicht aufgehoben. Ihre Zahlen sind gespeichert. ${detail}`,
  },
  survey: {
    size: (size, count) => `Klang: ${size}, ${takes(count)}.`,
    none: 'Von dieser Messreihe wurde kein Klang aufgehoben.',
  },
  take: {
    none: 'Von dieser Aufnahme wurde kein Klang aufgehoben.',
    kept: (kept, size) => `${kept} aufgehoben, ${size}.`,
    keptOf: (kept, whole, size) => `Die ersten ${kept} von ${whole} aufgehoben, ${size}.`,
    play: 'Abspielen',
    stop: 'Anhalten',
    unplayable: (detail) => `Der Klang ließ sich nicht abspielen. ${detail}`,
  },
  again: {
    action: 'Mit dieser Fassung noch einmal messen',
    running: 'Es wird gemessen …',
    progress: (done, all) => `Noch einmal gemessen: ${done} von ${all} Aufnahmen`,
    progressLabel: 'Noch einmal gemessene Aufnahmen',
    cancel: 'Anhalten',
    same: (note) => `${note}: Die Zahlen haben sich nicht geändert.`,
    changed: (note, change) => `${note}: um ${change} geändert.`,
    nothing: (detail) => `Diesmal wurde darin kein Ton gefunden; die Zahlen bleiben, wie sie waren. ${detail}`,
    failed: (detail) => `Es ließ sich nicht noch einmal messen; die Zahlen bleiben, wie sie waren. ${detail}`,
    done: (count) => `${takesWere(count)} noch einmal gemessen.`,
    stopped: (count) => `Angehalten. ${takesWere(count)} noch einmal gemessen; die anderen bleiben, wie sie waren.`,
    unchanged: 'Keine Zahl hat sich um 0,001 Cent oder mehr geändert.',
    most: (change, note) => `Die größte Änderung ist ${change}, bei ${note}.`,
    notFound: (notes) => `Diesmal wurde kein Ton gefunden in ${notes}; diese behalten ihre Zahlen.`,
    faulty: (count) => `Der Klang von ${count === 1 ? 'einer Aufnahme' : `${count} Aufnahmen`} war nicht lesbar.`,
  },
  history: {
    caption: 'Wie dieser Klang gelesen wurde',
    version: 'Programm',
    date: 'Gemessen',
    cents: 'Cent',
    uncertainty: 'Unsicherheit',
    change: 'Änderung',
    unknownVersion: 'nicht vermerkt',
    first: 'erste Messung',
  },
};
