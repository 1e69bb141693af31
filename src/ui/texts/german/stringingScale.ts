import type { scaleTexts } from '../stringingScale.ts';
import type { InTranslation } from '../translation.ts';

export const germanScaleTexts: InTranslation<typeof scaleTexts> = {
  title: 'Mensur',
  note: 'Zug, Spannung und Steifigkeit über den Umfang, aus der Tabelle, wie sie steht.',
  nothing:
    'Noch keine Zahl. Ein Ton braucht seine Saitenzahl, seine klingende Länge und seinen Draht; dann steht sein Zug hier.',
  pitch: 'Gerechnet bei',
  pitchChoices: { schedule: 'dem eigenen', 440: 'A4 = 440', 435: 'A4 = 435', other: 'einem anderen' },
  otherPitch: 'A4',
  drawn: 'Gezeichnet',
  drawnChoices: {
    tension: 'Zug einer Saite',
    noteTension: 'Zug des Tons',
    stress: 'Spannung',
    breaking: 'Anteil der Bruchlast',
    inharmonicity: 'Erwartete Inharmonizität',
  },
  axis: {
    tension: 'Zug einer Saite, N',
    noteTension: 'Zug aller Saiten des Tons, N',
    stress: 'Spannung im Draht oder Kern, MPa',
    breaking: 'Spannung zur kleinsten Zugfestigkeit, %',
    inharmonicity: 'Erwartete Inharmonizität B (logarithmisch)',
  },
  columns: {
    tension: 'tension_n',
    noteTension: 'note_tension_n',
    stress: 'stress_mpa',
    breaking: 'breaking_percent',
    inharmonicity: 'predicted_b',
  },
  series: {
    plain: 'blanker Draht',
    wound: 'umsponnen',
    woundB: 'umsponnen, mindestens',
    interpolated: 'beruht auf interpolierten Zellen',
    jump: 'Sprung gegen den Ton darunter',
  },
  bands: {
    high: '60 bis 70 %: hoch, nach üblicher Praxis',
    veryHigh: 'über 70 %: dehnt sich oder reißt',
    low: 'unter 30 %: Luftfeuchte bewegt sie am meisten',
  },
  drawnNone: {
    tension: 'Noch hat kein Ton Länge und Draht.',
    noteTension: 'Noch hat kein Ton Saitenzahl, Länge und Draht.',
    stress: 'Noch hat kein Ton Länge und Draht.',
    breaking:
      'Kein Draht hat eine Festigkeitstabelle: Nennen Sie in der Spalte der Drahtsorte eine, etwa EN 10270-1 SM, A228 oder eine eigene.',
    inharmonicity: 'Noch hat kein Ton Länge und Draht.',
  },
  summary: (what, count, low, high, jumps) =>
    `${what} bei ${count} Tönen, von ${low} bis ${high}; ${jumps === 1 ? 'ein Sprung fällt' : `${jumps} Sprünge fallen`} auf. Dieselben Zahlen stehen in der Tabelle darunter.`,
  tables: (names) => `Festigkeit aus: ${names}.`,
  tableNotes: (name, source, notes) => `${name} für ${notes} (${source})`,
  noTable: (notes) => `Keine Tabelle für ${notes}.`,
  assumptions:
    'Bei der klingenden Tonhöhe in gleichstufiger Stimmung, ohne Spreizung: 30 Cent Spreizung bei C8 machen 3,5 % Zug aus. Die Festigkeit ist die kleinste der Tabelle; eine Öse, ein Knick oder Rost nimmt davon weg. Die Steifigkeit einer umsponnenen Saite ist eine Untergrenze.',
  total: 'Alle Saiten zusammen',
  totalOf: (strings) => `von ${strings}`,
  strings: (count) => `${count} ${count === 1 ? 'Saite' : 'Saiten'}`,
  totalIncomplete: (notes) =>
    `${notes === 1 ? 'Ein Ton ist' : `${notes} Töne sind`} nicht darin, weil eine Zahl fehlt.`,
  atPitches: 'Bei anderen Stimmtönen',
  atPitch: (pitch, pull) => `${pitch}: ${pull}`,
  highest: 'Am nächsten am Reißen',
  highestAt: (share, note) => `${share} bei ${note}`,
  usual: 'Neuzeitliche Instrumente tragen 150 bis 200 kN, alte weniger (übliche Praxis, aus zweiter Hand).',
  sections: {
    caption: 'Zug von Abschnitt zu Abschnitt',
    section: 'Abschnitt',
    strings: 'Saiten',
    pull: 'Zug',
    tonnes: 'In Tonnen Zug',
    unknown: 'Töne ohne Zahl',
  },
  jumps: {
    title: 'Auffällige Sprünge',
    none: 'Zwischen Nachbarn fällt kein Sprung auf.',
    line: (low, high, change, ofLength, ofMass) =>
      `${low} zu ${high}: ${change} (${ofLength} durch die Länge, ${ofMass} durch den Draht)`,
    atBreak: ', an einem Übergang',
    practice:
      'Innerhalb eines Abschnitts fällt ein Sprung über 8 % und über dem Vierfachen der üblichen Streuung auf, an einem Übergang über 25 %. Beide Grenzen sind gewählt; eine Norm fand sich nicht.',
  },
  cautions: {
    title: 'Vorsicht',
    none: 'Nichts in diesen Zahlen verlangt mehr als die übliche Vorsicht.',
    practice: 'Grenzen der Spannung sind übliche Praxis, und Fachleute sind verschiedener Meinung.',
    'stress-very-high': (notes, shares) =>
      `${notes}: bei ${shares} der kleinsten Festigkeit des Drahts. Er dehnt sich wohl bleibend oder reißt: Treten Sie aus seiner Bahn und schützen Sie die Augen.`,
    'stress-high': (notes, shares) =>
      `${notes}: bei ${shares} der kleinsten Festigkeit des Drahts, hoch nach üblicher Praxis.`,
    'stress-low': (notes, shares) =>
      `${notes}: bei ${shares} der kleinsten Festigkeit des Drahts. So niedrig bewegt die Luftfeuchte die Tonhöhe am meisten.`,
    'grade-unknown': (notes) =>
      `${notes}: keine Festigkeitstabelle für den Draht; wie nahe er am Reißen ist, ist nicht bekannt.`,
    'diameter-outside-table': (notes) =>
      `${notes}: Der Durchmesser liegt außerhalb der Tabelle des Drahts; wie nahe er am Reißen ist, ist nicht bekannt.`,
    'figures-missing': (notes, fields) => `${notes}: Es fehlt: ${fields}.`,
    'rests-on-interpolated': (notes) =>
      `${notes}: beruht auf interpolierten Zellen. Messen Sie, bevor Draht geschnitten wird.`,
    'total-high': (pull) =>
      `Alle Saiten zusammen ziehen mit ${pull}, mehr als die 150 bis 200 kN, die bei neuzeitlichen Instrumenten üblich sind.`,
    safety:
      'Keine Zahl sagt hier, was eine alte Platte trägt: Platten reißen, manchmal Stunden später. Reißender Draht verletzt Augen und Hände. Diese Zahlen stützen das Urteil einer Fachkraft und ersetzen es nie.',
  },
  table: 'Dieselben Zahlen als Tabelle',
  caption: 'Zahlen jedes Tons',
  tableColumns: {
    note: 'Ton',
    strings: 'Saiten',
    tension: 'Eine Saite',
    noteTension: 'Der Ton',
    stress: 'Spannung',
    breaking: 'Der Bruchlast',
    grade: 'Festigkeitstabelle',
    inharmonicity: 'Erwartetes B',
  },
  atLeast: (value) => `≥ ${value}`,
  detail: (note, value) => `${note}: ${value}`,
  breakMarks: { wound: 'Ende der umsponnenen Saiten', bridge: 'Wechsel des Stegs' },
};
