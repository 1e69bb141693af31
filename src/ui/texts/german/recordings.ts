import type { recordingsTexts } from '../recordings.ts';
import type { Translated } from '../translation.ts';

export const germanRecordingsTexts: Translated<typeof recordingsTexts> = {
  title: 'Tondateien verwenden',
  choose: 'Tondateien verwenden …',
  drop: 'Oder legen Sie hier Dateien ab: eine von einer ganzen Messreihe oder viele von einzelnen Tönen. WAV, FLAC, OGG Vorbis, MP3.',
  dropNow: 'Loslassen, um diese Dateien zu lesen',
  reading: (count) => `${count === 1 ? 'Die Tondatei wird' : `${count} Tondateien werden`} gelesen …`,
  percent: (percent) => `${percent} % gelesen`,
  progressLabel: 'Wie viel gelesen ist',
  stop: 'Lesen anhalten',
  stopped: 'Das Lesen wurde angehalten. Was bis dahin behalten wurde, bleibt.',
  done: (noteCount, fileCount) =>
    `${noteCount === 1 ? 'Eine Aufnahme wurde' : `${noteCount} Aufnahmen wurden`} aus ${fileCount === 1 ? 'einer Tondatei' : `${fileCount} Tondateien`} gelesen.`,
  failed: (detail) =>
    `Das Lesen hielt wegen eines Fehlers im Programm an; was bis dahin behalten wurde, bleibt. ${detail}`,
  unreadable: (count) => `${count === 1 ? 'Eine Datei war' : `${count} Dateien waren`} nicht lesbar:`,
  unreadableFile: (name, why) => `${name}: ${why}.`,
  silent: (names) => `In ${names} wurde kein Ton gefunden.`,
  warning: (name, what) => `${name}: ${what}.`,
  stillReading:
    'Die Tondateien werden noch gelesen. Warten Sie, bis es so weit ist, oder halten Sie erst das Lesen an.',
  more: (names, count) => `${names} und ${count} weitere`,
};
