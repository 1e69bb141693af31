import type { longRecordTexts } from '../longRecord.ts';
import type { Translated } from '../translation.ts';

export const germanLongRecordTexts: Translated<typeof longRecordTexts> = {
  link: 'Die ausführliche Akte',
  title: 'Die ausführliche Akte',
  subtitle: 'Jeder Besuch, jeder Vergleich, jedes Diagramm und jede Tabelle: für Fachleute.',
  print: 'Drucken',
  savePage: 'Seite speichern',
  saveReadings: 'Messwerte als CSV',
  saveWork: 'Arbeiten als CSV',
  fileNames: { page: 'ausführliche Akte', readings: 'Messwerte', work: 'Arbeiten' },
  csvNote:
    'Die CSV der Messwerte enthält jede behaltene Aufnahme jedes Besuchs; ihre ersten Spalten liest der Befehl „drift“, und „cents“ bezieht sich dort bei jedem Besuch auf A4 = 440 Hz.',
};
