import type { chartTexts } from '../charts.ts';
import type { Translated } from '../translation.ts';

export const germanChartTexts: Translated<typeof chartTexts> = {
  drawing: 'Das Diagramm wird gezeichnet …',
  workingOut: 'Die Kurve wird berechnet …',
  saving: {
    legend: (name) => `Speichern: ${name}`,
    label: 'Speichern als',
    numbersLabel: 'Zahlen speichern als',
    formats: { svg: 'SVG', png: 'PNG', csv: 'CSV' },
    hints: {
      svg: 'Eine Zeichnung, die in jeder Größe scharf bleibt',
      png: 'Ein Bild für einen Brief oder eine Nachricht',
      csv: 'Die Zahlen, für jede Tabellenkalkulation',
    },
    notDrawn: 'Das Diagramm ist noch nicht gezeichnet; warten Sie einen Augenblick und versuchen Sie es erneut',
    fault: (detail) => `Nichts wurde gespeichert: ${detail}`,
  },
  showTable: 'Dieselben Zahlen als Tabelle',
  measured: 'gemessen',
  standsOut: 'fällt auf',
  note: 'Ton',
  string: 'Saite',
  ratio: 'Gemessen, als Vielfaches der Kurve',
  fromCurve: 'nicht gemessen, aus der Kurve',
  inharmonicity: {
    title: 'Inharmonizität',
    note: 'Balken zeigen zwei Standardunsicherheiten. Neunzehn von zwanzig gewöhnlichen Tönen liegen im Band.',
    axisTitle: 'Inharmonizität B über den Umfang, logarithmisch',
    curve: 'Kurve durch alle Töne',
    tooFew: 'Noch keine Kurve: Dazu braucht es mindestens acht Töne mit gemessener Inharmonizität.',
    summary: (count, standing) =>
      `Inharmonizität B von ${count} Saiten über den Umfang, mit der Kurve durch sie. ${standing} Dieselben Zahlen stehen in der Tabelle darunter.`,
    nothingStandsOut: 'Kein Ton fällt aus der Kurve.',
    standingOut: (names) => `Auffällig: ${names}.`,
    one: (note, ratio) => `${note} (das ${ratio}-Fache der Kurve)`,
    timesCurve: (ratio) => `das ${ratio}-Fache der Kurve`,
    meaning:
      'Ein solcher Ton wurde falsch aufgenommen, oder seine Saite ist anders als die Nachbarn: Spielen Sie ihn noch einmal, dann messen Sie den Draht.',
    spread: (below, topNote, above) =>
      `Die Töne streuen um die Kurve mit ${below} bis ${topNote} und mit ${above} darüber.`,
    notMeasured: (notes) => `Aus der Kurve, weil weniger als drei Teiltöne zu hören waren: ${notes}.`,
    caption: 'Inharmonizität je Saite mit einer Standardunsicherheit, und die Kurve am Ton',
    measuredB: 'Gemessenes B',
    curveB: 'B der Kurve',
  },
  life: {
    title: 'Wie lange Töne leben',
    note: 'Zeit für 60 dB. Neunzehn von zwanzig gewöhnlichen Tönen liegen im Band.',
    axisTitle: 'Klangdauer in Sekunden, logarithmisch',
    curve: 'Kurve durch alle Töne',
    tooFew: 'Noch keine Kurve: Dazu braucht es mindestens acht Töne, deren Abklingen gemessen wurde.',
    summary: (count, weak) =>
      `Zeit für 60 dB von ${count} Saiten über den Umfang, in Sekunden, mit der Kurve durch sie. ${weak} Dieselben Zahlen stehen in der Tabelle darunter.`,
    weak: 'schwach',
    nothingWeak: 'Kein Ton lebt weniger als halb so lang wie die Töne um ihn.',
    weakNotes: (names) => `Schwach, sie leben weniger als halb so lang wie die Töne um sie: ${names}.`,
    one: (note, ratio) => `${note} (das ${ratio}-Fache der Kurve)`,
    timesCurve: (ratio) => `das ${ratio}-Fache der Kurve`,
    spread: (spread) => `Die Töne streuen um die Kurve mit ${spread}.`,
    caption: 'Klangdauer je Saite, und die Kurve am Ton',
    measuredS: 'Gemessen',
    curveS: 'Kurve',
  },
  repeatability: {
    sentence: (scatter, repeats, notes) =>
      `Anschläge derselben Saite unterscheiden sich um ${scatter} (eine Standardabweichung, aus ${repeats} von ${notes}). Wo ein Ton wiederholt gespielt wurde, ist seine Unsicherheit nicht kleiner als das.`,
    repeat: 'Wiederholung',
    repeats: 'Wiederholungen',
    note: 'Ton',
    notes: 'Tönen',
  },
};
