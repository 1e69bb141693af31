/** Words of a schedule's sheet: columns, keys, complaints, what is pasted and brought in. */
export const sheetTexts = {
  title: 'Sheet',
  note: 'A row for each note. Every entry is stored at once.',
  label: (name: string) => `Stringing schedule, ${name}`,
  rowTitle: 'Note',
  columns: {
    stringCount: 'Strings',
    speakingLengthMm: 'Speaking length',
    wireDiameterMm: 'Wire',
    coreDiameterMm: 'Core',
    wrap: 'Wrap',
    wireGrade: 'Grade',
    bridge: 'Bridge',
  },
  /** In running text. */
  fields: {
    stringCount: 'number of strings',
    speakingLengthMm: 'speaking length',
    wireDiameterMm: 'wire diameter',
    coreDiameterMm: 'core diameter',
    wrap: 'metal of the wrap',
    wireGrade: 'wire grade',
    bridge: 'bridge',
  },
  units: { mm: 'mm' },
  wireNote: 'The diameter of plain wire, or over the wrap of a wound string.',
  interpolated: 'interpolated, not measured',
  keysTitle: 'Keys',
  keys: [
    'Arrows move; type to replace, F2 to change what stands there.',
    'Enter stores and goes down, Tab stores and goes right; Enter after a run of Tabs goes to the next row. Escape gives up.',
    'Shift and arrows choose several cells; Delete empties them; Ctrl D fills the chosen ones from their first row.',
    'Ctrl C and Ctrl V copy and paste, from and to a spreadsheet; Ctrl Z and Ctrl Y undo and redo.',
    'A diameter can be typed by its size, as 17 inch, 13½ metric or 17 i, and in inches, as 0.039 in.',
    'c, i and b are enough for copper, iron and brass; b and l for bass and long.',
  ],
  typed: 'A number from 12 to 26 typed as a diameter is',
  typedChoices: { ask: 'asked about', inch: 'an inch size', metric: 'a metric size' },
  buttons: {
    undo: 'Undo',
    redo: 'Redo',
    fillDown: 'Fill down',
    interpolate: 'Interpolate empty cells',
    takeBack: 'Take interpolated ones out',
    paste: 'Paste rows',
    bringIn: 'Bring in CSV',
    save: 'Save as CSV',
  },
  interpolateHint:
    'Interpolated cells bear the sign ≈ and stand in italics. They are reckoned between measured notes of one section, and never across a break.',
  interpolated2: (count: number) =>
    count === 0
      ? 'Nothing to interpolate: an empty cell needs a measured one below and above it in its section.'
      : `${count} ${count === 1 ? 'cell' : 'cells'} interpolated, marked ≈. Ctrl Z takes them back.`,
  takenOut: (count: number) =>
    `${count} interpolated ${count === 1 ? 'cell' : 'cells'} emptied. Ctrl Z brings them back.`,
  pasted: (notes: number, cells: number) =>
    `${cells} ${cells === 1 ? 'cell' : 'cells'} in ${notes} ${notes === 1 ? 'row' : 'rows'} pasted. Ctrl Z takes them back.`,
  broughtIn: (rows: number, file: string) =>
    `${rows} ${rows === 1 ? 'row' : 'rows'} brought in from ${file}. Ctrl Z takes them back.`,
  notBroughtIn: (file: string, why: string) => `${file} ${why}`,
  paste: {
    title: 'Paste rows',
    intro:
      'From a spreadsheet or a list: tabs, semicolons or commas between cells, decimal points or commas. A first line that names columns places them; a column of note names places the rows.',
    field: 'Rows',
    start: (note: string, column: string) => `Without names the rows begin at ${note}, ${column}.`,
    summary: (cells: number, rows: number) =>
      `${cells} ${cells === 1 ? 'cell' : 'cells'} in ${rows} ${rows === 1 ? 'row' : 'rows'} can be read.`,
    header: 'The first line was read as the columns’ names.',
    noHeader: 'No line of names was found.',
    unknownColumns: (names: string) => `Left out, as a schedule has no such column: ${names}.`,
    complaints: (count: number) => `${count} ${count === 1 ? 'cell' : 'cells'} cannot be read:`,
    moreComplaints: (count: number) => `and ${count} more`,
    complaint: (line: number, cell: number, what: string) => `Line ${line}, cell ${cell}: ${what}`,
    problems: {
      'unknown-note': (text: string) => `“${text}” is no note.`,
      'outside-schedule': (text: string) => `“${text}” lies outside the schedule.`,
    },
    takeAll: 'Put them in',
    takeRest: 'Put in what can be read',
    nothing: 'Nothing of this can be read.',
  },
  problems: {
    'not-a-number': (text: string) =>
      `“${text}” is no number. Type one such as 412.5 or 412,5, or leave the cell empty.`,
    'not-whole': (text: string) => `“${text}” is not a whole number of strings.`,
    'out-of-range': (text: string, least: number, most: number) =>
      `“${text}” lies outside ${least} to ${most}, where all piano strings lie.`,
    'gauge-number': (text: string) => `“${text}” is no diameter in millimetres; as a size’s number it would be`,
    inches: (text: string) => `“${text}” is no diameter in millimetres; in inches it would be`,
    'not-one-of': (text: string, choices: string) => `“${text}” has to be ${choices}, or empty.`,
  },
  orWord: 'or',
  refused: (note: string, column: string, why: string) => `${note}, ${column}: ${why}`,
  use: (meaning: string) => `Use ${meaning}`,
  complaints: {
    title: (count: number) => `${count} ${count === 1 ? 'thing' : 'things'} to look at`,
    none: 'Nothing in the sheet contradicts itself.',
    line: (note: string, column: string, what: string) => `${note}, ${column}: ${what}`,
    goTo: (note: string, column: string) => `Go to ${note}, ${column}`,
    severity: { fault: 'No figure can come of this', look: 'Look again' },
    kinds: {
      'core-not-thinner': 'the core is not thinner than the whole string',
      'wrap-missing': 'there is a core, and no metal of a wrap',
      'core-missing': 'there is a wrap, and no core',
      'length-rises': 'longer than the note below it in its section',
      'length-off-line': 'off the line of its neighbours by more than 4 %',
      'diameter-rises': 'thicker than the note below it in its section',
      'wound-among-plain': 'wound, above a plain string',
      'string-count-falls': 'fewer strings than the note below it',
    },
  },
};
