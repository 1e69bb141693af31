/** Words of the screen that plays a note at two visits; those on the picture and in the file are in report/words.ts. */
export const hearingTexts = {
  link: 'Hear it',
  title: 'Hear it',
  subtitle: 'The same note at two visits, one after the other, equally loud.',
  empty:
    'No note has its sound kept at two surveys yet. Sounds are kept when “Sound kept” is switched on at the start of a survey; two surveys with it, and a note can be heard then and now.',
  choice: { title: 'What to hear', note: 'Only notes whose sound was kept at two surveys or more are offered.' },
  note: 'Note and string',
  first: 'First',
  second: 'Then',
  partial: 'Partial to draw',
  partialChoice: (number: number, isBeating: boolean) => `Partial ${number}${isBeating ? ', beats' : ''}`,
  noteChoice: (note: string, string: string, count: number) =>
    `${note}${string === '' ? '' : `, ${string}`} (${count} sounds)`,
  listen: { title: 'Listen' },
  playBoth: 'Play one after the other',
  playFirst: 'Play the first',
  playSecond: 'Play the second',
  stop: 'Stop',
  save: 'Save as a file',
  fileName: (note: string) => `${note} then and now`,
  preparing: 'Preparing the sounds…',
  silent: 'One of these two sounds is silent and cannot be brought to the loudness of the other.',
  unreadable: (reason: string) => `This sound cannot be played: ${reason}`,
  nowPlaying: (which: string) => `Playing: ${which}`,
};
