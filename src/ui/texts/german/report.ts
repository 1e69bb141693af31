import type { reportTexts } from '../report.ts';
import type { Translated } from '../translation.ts';

export const germanReportTexts: Translated<typeof reportTexts> = {
  link: 'Das Blatt für den Besitzer',
  title: 'Das Blatt für den Besitzer',
  next: 'Wählen Sie, was hineinkommt; dann drucken Sie es oder speichern es als Datei, die sich in jedem Browser öffnet.',
  print: 'Drucken',
  save: 'Als Datei speichern',
  fileName: 'Blatt für den Besitzer',
  choice: {
    title: 'Was hineinkommt',
    note: 'Auf diesem Gerät gemerkt. Das Urteil, wie gemessen wurde und die Warnungen stehen immer auf dem Blatt.',
    sections: {
      owner: 'Wem es gehört und wo es steht',
      course: 'Wie es die Stimmung hielt',
      'false-beats': 'Falsche Schwebungen',
      advice: 'Was wir empfehlen',
      work: 'Was wann getan wurde',
      photographs: 'Fotos',
    },
    photographs: 'Fotos, die gezeigt werden',
    photograph: (caption, date) => (caption === '' ? `Foto vom ${date}` : `${caption} (${date})`),
    noPhotographs: 'Zu diesem Instrument wurden keine Fotos hinzugefügt.',
    remark: 'Eine eigene Bemerkung',
    remarkHint: 'Steht auf dem Blatt als Bemerkung der Fachkraft, getrennt von den gemessenen Zahlen.',
  },
  page: 'Das Blatt',
  pageNote: 'So, wie es auf A4 oder US Letter gedruckt wird.',
};
