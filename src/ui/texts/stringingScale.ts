/** Words of a scale: what its strings pull, where it steps, what to take care of. */
export const scaleTexts = {
  title: 'Scale',
  note: 'Pull, stress and stiffness along the compass, from the sheet as it stands.',
  nothing:
    'No figure yet. A note needs its number of strings, its speaking length and its wire; then its pull stands here.',
  pitch: 'Worked out at',
  pitchChoices: { schedule: 'its own', 440: 'A4 = 440', 435: 'A4 = 435', other: 'another' },
  otherPitch: 'A4',
  drawn: 'Drawn',
  drawnChoices: {
    tension: 'Pull of one string',
    noteTension: 'Pull of the note',
    stress: 'Stress',
    breaking: 'Share of breaking',
    inharmonicity: 'Expected inharmonicity',
  },
  axis: {
    tension: 'Pull of one string, N',
    noteTension: 'Pull of all strings of the note, N',
    stress: 'Stress in the wire or the core, MPa',
    breaking: 'Stress over least tensile strength, %',
    inharmonicity: 'Expected inharmonicity B (logarithmic)',
  },
  columns: {
    tension: 'tension_n',
    noteTension: 'note_tension_n',
    stress: 'stress_mpa',
    breaking: 'breaking_percent',
    inharmonicity: 'predicted_b',
  },
  series: {
    plain: 'plain wire',
    wound: 'wound',
    woundB: 'wound, at least',
    interpolated: 'rests on interpolated cells',
    jump: 'steps away from the note below',
  },
  bands: {
    high: '60 to 70 %: high, by common practice',
    veryHigh: 'over 70 %: stretches or breaks',
    low: 'under 30 %: humidity moves it most',
  },
  drawnNone: {
    tension: 'No note has length and wire yet.',
    noteTension: 'No note has its number of strings, length and wire yet.',
    stress: 'No note has length and wire yet.',
    breaking:
      'No wire has a strength table: name one in the grade column, such as EN 10270-1 SM, A228 or a table of your own.',
    inharmonicity: 'No note has length and wire yet.',
  },
  summary: (what: string, count: number, low: string, high: string, jumps: number) =>
    `${what} for ${count} notes, from ${low} to ${high}; ${jumps} ${jumps === 1 ? 'step stands' : 'steps stand'} out. The same numbers are in the table below.`,
  tables: (names: string) => `Strength from: ${names}.`,
  tableNotes: (name: string, source: string, notes: string) => `${name} for ${notes} (${source})`,
  noTable: (notes: string) => `No table for ${notes}.`,
  assumptions:
    'At the sounding pitch in equal temperament, without stretch: 30 cents of stretch at C8 make 3.5 % of pull. Strength is the least that the table gives; an eye, a bend or rust takes from it. The stiffness of a wound string is a lower bound.',
  total: 'All strings together',
  totalOf: (strings: string) => `of ${strings}`,
  strings: (count: number) => `${count} ${count === 1 ? 'string' : 'strings'}`,
  totalIncomplete: (notes: number) =>
    `${notes} ${notes === 1 ? 'note is' : 'notes are'} not in it, because a figure is missing.`,
  atPitches: 'At other pitches',
  atPitch: (pitch: string, pull: string) => `${pitch}: ${pull}`,
  highest: 'Nearest to breaking',
  highestAt: (share: string, note: string) => `${share} at ${note}`,
  usual: 'Modern instruments carry 150 to 200 kN, old ones less (common practice, at second hand).',
  sections: {
    caption: 'Pull from section to section',
    section: 'Section',
    strings: 'Strings',
    pull: 'Pull',
    tonnes: 'In tonnes-force',
    unknown: 'Notes without a figure',
  },
  jumps: {
    title: 'Steps that stand out',
    none: 'No step between neighbours stands out.',
    line: (low: string, high: string, change: string, ofLength: string, ofMass: string) =>
      `${low} to ${high}: ${change} (${ofLength} by length, ${ofMass} by wire)`,
    atBreak: ', at a break',
    practice:
      'Within a section a step stands out beyond 8 % and beyond four times the usual scatter, at a break beyond 25 %. Both limits are chosen; no norm was found.',
  },
  cautions: {
    title: 'Take care',
    none: 'Nothing in these figures calls for care beyond the usual.',
    practice: 'Limits of stress are common practice, and practitioners differ.',
    'stress-very-high': (notes: string, shares: string) =>
      `${notes}: at ${shares} of the least strength of its wire. It is likely to stretch for good, or to break: stand out of its line and protect your eyes.`,
    'stress-high': (notes: string, shares: string) =>
      `${notes}: at ${shares} of the least strength of its wire, high by common practice.`,
    'stress-low': (notes: string, shares: string) =>
      `${notes}: at ${shares} of the least strength of its wire. So low, humidity moves its pitch most.`,
    'grade-unknown': (notes: string) =>
      `${notes}: no strength table for its wire, so how near it is to breaking is not known.`,
    'diameter-outside-table': (notes: string) =>
      `${notes}: the diameter lies outside its wire’s table, so how near it is to breaking is not known.`,
    'figures-missing': (notes: string, fields: string) => `${notes}: ${fields.toLowerCase()} missing.`,
    'rests-on-interpolated': (notes: string) => `${notes}: rests on interpolated cells. Measure before wire is cut.`,
    'total-high': (pull: string) =>
      `All strings together pull ${pull}, more than the 150 to 200 kN that are usual in modern instruments.`,
    safety:
      'No figure here says what an old plate bears: plates crack, sometimes hours later. Breaking wire injures eyes and hands. These figures support the judgement of a qualified technician and never replace it.',
  },
  table: 'The same numbers as a table',
  caption: 'Figures of each note',
  tableColumns: {
    note: 'Note',
    strings: 'Strings',
    tension: 'One string',
    noteTension: 'The note',
    stress: 'Stress',
    breaking: 'Of breaking',
    grade: 'Strength table',
    inharmonicity: 'Expected B',
  },
  atLeast: (value: string) => `≥ ${value}`,
  detail: (note: string, value: string) => `${note}: ${value}`,
  breakMarks: { wound: 'wound wire ends', bridge: 'bridge changes' },
};
