/** Words of the page that shows how it measures. */
export const methodTexts = {
  title: 'How it measures, and how sure it is',
  link: 'How it measures',
  subtitle: 'Every picture below was worked out just now, on this device, by the same steps that measure your surveys.',
  working: 'Working it out …',
  failed: (detail: string) => `This picture could not be made: ${detail}. Load the page anew to try again.`,
  axis: {
    frequency: 'Frequency, Hz',
    seconds: 'Seconds',
    level: 'dB below full scale',
    cents: 'Cents; below the line flatter',
    errors: 'Error, in stated uncertainties',
    share: 'Share of the figures',
    note: 'Note',
  },
  note: {
    title: 'One note',
    what: 'A struck string sounds many partials at once. Because wire is stiff they lie further apart the higher they are; how much further is the string’s inharmonicity. The pitch is that of partial 1, and all partials together steady it.',
    picture: (note: string) => `Spectrum of one ${note}`,
    legend: {
      spectrum: 'what was heard',
      partial: 'a partial found',
      fitted: 'upper strokes: where a stiff string’s partials lie',
      even: 'lower strokes: whole multiples of partial 1',
    },
    summary: (note: string, count: number) =>
      `Spectrum of ${note}. ${count} partials were found; their distance from whole multiples of partial 1 grows with their number.`,
    found: (note: string, count: number) => `Found by itself: ${note}, ${count} partials`,
    partial1: 'Partial 1',
    pitch: 'Against equal temperament',
    inharmonicity: 'Inharmonicity B',
    truth: 'True',
    truthValue: (cents: string) => `${cents}; this sound was calculated, so its truth is known`,
  },
  beat: {
    title: 'One string that beats by itself',
    what: 'Each partial is looked at alone, as it dies away. Two tones close together in one partial make it swell and fade: a false beat. The straight lines are the tones found; what was heard swings between their sum and their difference.',
    picture: (partialNumber: number, note: string) => `Partial ${partialNumber} of one ${note}, as it dies away`,
    legend: { heard: 'what was heard', tone: 'a tone found in it' },
    summary: (partialNumber: number, rate: string) =>
      `The level of partial ${partialNumber} falls and swings, ${rate}; two straight lines are the tones found in it.`,
    rate: 'Beat found',
    rateValue: (rate: string, uncertainty: string) => `${rate} ± ${uncertainty}`,
    depth: 'From peak to trough',
    truth: 'True',
    truthRate: (rate: string) => rate,
  },
  year: {
    title: 'Weather and wood',
    what: 'Between two visits the weather moves all strings of a register alike, and it comes back. That part is found from all visits together and taken off. What is left is each string’s own; a pin is named only when the same string loses again and again, by more than its uncertainty.',
    read: (from: string, to: string) => `What the strings did, ${from} to ${to}`,
    left: 'What is left when the weather is taken off, drawn larger',
    legend: {
      reading: 'as read',
      whole: 'what weather, settling and the instrument’s common course account for',
      own: 'left over, with two standard uncertainties either way',
      named: 'a string that all visits together name as giving way',
    },
    summaryRead: (count: number, from: string, to: string) =>
      `Change of ${count} strings of an invented instrument from ${from} to ${to}, and the smooth part that the weather accounts for.`,
    summaryLeft: (namedCount: number) =>
      `The same strings with the smooth part taken off; ${namedCount} of them are named as giving way.`,
    truth: (truth: string, named: string, namedCount: number, wrongCount: number) =>
      `The instrument is invented, so the truth is known: the pins from ${truth} give way. Named, from all thirteen visits: ${namedCount} strings (${named}), ${wrongCount === 0 ? 'none of them wrongly' : `${wrongCount} of them wrongly`}.`,
    none: 'none',
  },
  certainty: {
    title: 'How sure it is',
    what: 'A figure after ± is one standard uncertainty. If it is honest, the truth lies within it two times in three, and within twice that nineteen times in twenty. Charts show two. To see whether it holds, sounds with a known truth are measured here and each error is held against the uncertainty that was stated.',
    picture: 'Errors of frequencies, F0 and B, in stated uncertainties',
    legend: { errors: 'the errors found', normal: 'what honest uncertainties give' },
    summary: (one: string, two: string) =>
      `Columns of errors beside the expected bell: ${one} within one, ${two} within two.`,
    progress: (done: number, all: number) => `${done} of ${all} sounds measured`,
    within: (sigmas: number) => (sigmas === 1 ? 'Within one uncertainty' : 'Within two uncertainties'),
    withinValue: (share: string, expected: string) => `${share}; honest is ${expected}`,
    count: 'Figures compared',
    limits:
      'These sounds are cleaner than a room. On a piano the hammer, the room and the felt strip add their own scatter: a note played twice in a survey shows how much.',
  },
  limits: {
    title: 'What it cannot know',
    clock:
      'A microphone’s clock may run fast or slow and shifts every pitch alike. Changes between surveys with the same device are hardly touched; it can be checked under “Microphone clock”.',
    clockLink: 'Check the microphone’s clock',
    hygrometer:
      'A hygrometer’s reading is one moment in one place; the wood remembers weeks. How damp an instrument’s wood was is therefore taken from the strings as well.',
    evidence:
      'Two surveys make one comparison, and one comparison names no pin. “Not enough evidence yet” is an answer, and says which visit would help most.',
  },
};
