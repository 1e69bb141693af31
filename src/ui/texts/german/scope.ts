import type { scopeTexts } from '../scope.ts';
import type { Translated } from '../translation.ts';

const PART =
  'Nur diese Töne zählen als gestimmt. Wurde mehr gestimmt? Tragen Sie auf der Seite des Instruments bei den Arbeiten ein Stimmen ein.';

export const germanScopeTexts: Translated<typeof scopeTexts> = {
  label: 'Welche Töne',
  kinds: {
    all: 'Alle Töne',
    sample: 'Eine schnelle Stichprobe',
    section: 'Ein Abschnitt',
    chosen: 'Ausgewählte Töne',
  },
  allNotes: 'alle Töne',
  sample: (count) => `schnelle Stichprobe von ${count} Tönen`,
  section: (range) => `Abschnitt ${range}`,
  chosen: (notes) => `ausgewählte Töne ${notes}`,
  sampleCount: 'Wie viele Töne',
  sampleCountValue: (count, all) => `${count} von ${all} Tönen`,
  sampleNotes: 'Gefragt wird nach:',
  answerUniform: (cents) =>
    `Bei der üblichen Streuung von 0,7 Cent von Besuch zu Besuch ist sicher zu erkennen, dass sich alles gemeinsam bewegt hat, sobald es ${cents} Cent oder mehr sind`,
  answerZone: (noteCount, cents) =>
    `und zu sehen ist ein Bereich von ${noteCount} benachbarten Tönen, wo immer er liegt, sobald er ${cents} Cent oder mehr unter die übrigen gefallen ist`,
  answerLimit: 'Ein einzelner Wirbel, der zwischen den gespielten Tönen nachgibt, bleibt ungesehen.',
  sectionWhole: 'Abschnitt',
  sectionOther: 'Andere Töne',
  from: 'Von',
  to: 'Bis',
  chooseNotes: 'Berühren Sie die Töne, die aufgenommen werden sollen',
  chosenCount: (count) => (count === 1 ? '1 Ton ausgewählt' : `${count} Töne ausgewählt`),
  clear: 'Keinen auswählen',
  noneChosen: 'Wählen Sie mindestens einen Ton.',
  chosenHint:
    'Für die Arbeit am Steg: Dämpfen Sie die Nachbarn ab und spielen Sie von jedem Ton nacheinander die linke, mittlere und rechte Saite. Übergehen Sie eine Saite, die es nicht gibt.',
  leftAs: {
    sample: 'Die Stichprobe steht für das ganze Instrument, das damit als gestimmt zählt.',
    section: PART,
    chosen: PART,
  },
};
