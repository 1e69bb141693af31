import type { photographTexts } from '../photographs.ts';
import type { Translated } from '../translation.ts';

export const germanPhotographTexts: Translated<typeof photographTexts> = {
  title: 'Fotos',
  ofInstrument: 'Fotos',
  ofVisit: (date) => `Fotos vom Besuch am ${date}`,
  ofNote: (note) => `Fotos von ${note}`,
  open: (count) => (count === 0 ? 'Fotos hinzufügen' : count === 1 ? 'Ein Foto' : `${count} Fotos`),
  add: 'Fotos hinzufügen',
  choose: 'Bilddateien wählen',
  take: 'Foto aufnehmen',
  note: 'Bilder werden auf höchstens 2000 Punkte Breite und Höhe gebracht. Wo sie entstanden, wird weggelassen; das Datum bleibt.',
  keepFile:
    'Die Dateien genau so aufheben, wie sie sind, mit allem, was die Kamera hineinschrieb (oft auch, wo das Bild entstand)',
  adding: (done, all) => `Wird hinzugefügt: ${done} von ${all}`,
  added: (count) => `${count === 1 ? 'Ein Foto wurde' : `${count} Fotos wurden`} hinzugefügt.`,
  notPictures: (names) =>
    `Kein Bild, das dieser Browser lesen kann: ${names}. JPEG, PNG und WebP lassen sich hinzufügen.`,
  empty:
    'Noch kein Foto. Der Stimmstock von oben, der Steg, ein Schild im Gehäuse: was Sie in zehn Jahren wieder sehen wollen.',
  list: 'Fotos, das letzte zuerst',
  untitled: 'Foto',
  more: (count) => `${count} weitere zeigen`,
  takenOn: (date) => `aufgenommen ${date}`,
  addedOn: (date) => `hinzugefügt ${date}`,
  show: (caption) => `Öffnen: ${caption}`,
  dialog: {
    caption: 'Bildunterschrift',
    belongs: 'Gehört zu',
    instrument: 'dem Instrument',
    visit: 'Besuch',
    note: 'Ton',
    noteHint: 'Mit Namen, etwa C5; leer, wenn es keinen einzelnen Ton zeigt.',
    noteFault: 'Geben Sie einen Ton des Umfangs mit Namen an, etwa C5, oder lassen Sie das Feld leer.',
    string: 'Saite',
    size: 'Größe',
    pixels: (width, height, size) => `${width} × ${height} Punkte, ${size}`,
    delete: 'Dieses Foto löschen',
    deleted: (caption) => `Das Foto „${caption}“ liegt im Papierkorb.`,
    unreadable: 'Das Bild selbst ist nicht auf diesem Gerät.',
    previous: 'Vorheriges',
    next: 'Nächstes',
  },
};
