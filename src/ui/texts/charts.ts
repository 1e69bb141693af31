/** Words for the charts that a survey's notes make together. */
export const chartTexts = {
  drawing: 'Drawing the chart …',
  showTable: 'The same numbers as a table',
  measured: 'measured',
  standsOut: 'stands out',
  note: 'Note',
  string: 'String',
  ratio: 'Measured, as a multiple of the curve',
  fromCurve: 'not measured, from the curve',
  inharmonicity: {
    title: 'Inharmonicity',
    note: 'Bars show two standard uncertainties. Nineteen of twenty ordinary notes lie in the band.',
    axisTitle: 'Inharmonicity B along the compass, logarithmic',
    curve: 'curve fitted to all notes',
    tooFew: 'No curve yet: it takes at least eight notes with a measured inharmonicity.',
    summary: (count: number, standing: string) =>
      `Inharmonicity B of ${count} strings along the compass, with the curve fitted to them. ${standing} The same numbers are in the table below.`,
    nothingStandsOut: 'No note stands out from the curve.',
    standingOut: (names: string) => `Stands out: ${names}.`,
    one: (note: string, ratio: string) => `${note} (${ratio} times the curve)`,
    timesCurve: (ratio: string) => `${ratio} times the curve`,
    meaning:
      'Such a note was taken wrongly, or its string differs from its neighbours’: play it again, then measure the wire.',
    spread: (below: string, topNote: string, above: string) =>
      `Notes scatter about the curve by ${below} up to ${topNote} and by ${above} above it.`,
    notMeasured: (notes: string) => `From the curve, because fewer than three partials were heard: ${notes}.`,
    caption: 'Inharmonicity per string with one standard uncertainty, and the curve at the note',
    measuredB: 'Measured B',
    curveB: 'B of the curve',
  },
  life: {
    title: 'How long notes live',
    note: 'Time for 60 dB. Nineteen of twenty ordinary notes lie in the band.',
    axisTitle: 'Life of the tone in seconds, logarithmic',
    curve: 'curve fitted to all notes',
    tooFew: 'No curve yet: it takes at least eight notes whose decay was measured.',
    summary: (count: number, weak: string) =>
      `Time for 60 dB of ${count} strings along the compass, in seconds, with the curve fitted to them. ${weak} The same numbers are in the table below.`,
    weak: 'weak',
    nothingWeak: 'No note lives less than half as long as the notes around it.',
    weakNotes: (names: string) => `Weak, living less than half as long as the notes around: ${names}.`,
    one: (note: string, ratio: string) => `${note} (${ratio} times the curve)`,
    timesCurve: (ratio: string) => `${ratio} times the curve`,
    spread: (spread: string) => `Notes scatter about the curve by ${spread}.`,
    caption: 'Life of the tone per string, and the curve at the note',
    measuredS: 'Measured',
    curveS: 'Curve',
  },
  repeatability: {
    sentence: (scatter: string, repeats: string, notes: string) =>
      `Strikes of one string differ by ${scatter} (one standard deviation, from ${repeats} of ${notes}). Where a note was played again, its uncertainty is no smaller than that.`,
    repeat: 'repeat',
    repeats: 'repeats',
    note: 'note',
    notes: 'notes',
  },
};
