/** Words for the sound of takes: how much is kept, hearing it, measuring it again. */
export const soundTexts = {
  title: 'Sound',
  kept: {
    label: 'How much sound is kept of each take',
    choices: { 'first-seconds': 'The first 4 seconds', whole: 'All of it', none: 'None' },
    note: (size: string) =>
      `Sound lets you hear a note again in ten years, and measure it again with a better program. Four seconds of 88 notes take about ${size}. The choice holds on this device, for takes from now on.`,
    stored: (size: string) => `Sound on this device: ${size}.`,
    open: (choice: string) => `Sound kept: ${choice.toLowerCase()}`,
  },
  dropped: {
    'storage-full':
      'This device is nearly full, so the sound of the last take was not kept. Its figures are stored; so will those of the next takes be.',
    other: (detail: string) => `The sound of the last take was not kept. Its figures are stored. ${detail}`,
  },
  survey: {
    size: (size: string, count: number) => `Sound: ${size}, ${count} ${count === 1 ? 'take' : 'takes'}.`,
    none: 'No sound was kept of this survey.',
  },
  take: {
    none: 'No sound was kept of this take.',
    kept: (kept: string, size: string) => `${kept} kept, ${size}.`,
    keptOf: (kept: string, whole: string, size: string) => `The first ${kept} of ${whole} kept, ${size}.`,
    play: 'Play',
    stop: 'Stop',
    unplayable: (detail: string) => `The sound could not be played. ${detail}`,
  },
  again: {
    action: 'Measure again with this version',
    running: 'Measuring …',
    progress: (done: number, all: number) => `Measuring again: ${done} of ${all} takes`,
    progressLabel: 'Takes measured again',
    cancel: 'Stop',
    same: (note: string) => `${note}: the figures did not change.`,
    changed: (note: string, change: string) => `${note}: changed by ${change}.`,
    nothing: (detail: string) => `No note was found in it this time, so the figures stay as they were. ${detail}`,
    failed: (detail: string) => `It could not be measured again; the figures stay as they were. ${detail}`,
    done: (count: number) => `${count} ${count === 1 ? 'take was' : 'takes were'} measured again.`,
    stopped: (count: number) =>
      `Stopped. ${count} ${count === 1 ? 'take was' : 'takes were'} measured again; the others stay as they were.`,
    unchanged: 'No figure changed by as much as 0.001 cents.',
    most: (change: string, note: string) => `The largest change is ${change}, in ${note}.`,
    notFound: (notes: string) => `No note was found this time in ${notes}; those keep their figures.`,
    faulty: (count: number) => `The sound of ${count} ${count === 1 ? 'take' : 'takes'} could not be read.`,
  },
  history: {
    caption: 'What this sound was read as',
    version: 'Program',
    date: 'Measured',
    cents: 'Cents',
    uncertainty: 'Uncertainty',
    change: 'Change',
    unknownVersion: 'not noted',
    first: 'first reading',
  },
};
