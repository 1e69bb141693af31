/** Words that more than one screen uses. */
export const commonTexts = {
  productName: 'Stillpin',
  skipToContent: 'Skip to the content',
  trail: 'Where you are',
  onThisPage: 'On this page',
  workshop: 'Workshop',
  loading: 'Reading the records …',
  undo: 'Undo',
  putAway: 'Put away',
  save: 'Save',
  cancel: 'Cancel',
  change: 'Change',
  close: 'Close',
  invented: 'Invented data',
  inventedHint: 'From the demonstration workshop: nobody measured this.',
  cautionWord: 'Caution:',
  faultWord: 'Not done:',
  theme: {
    label: 'Brightness',
    device: 'As the device',
    light: 'Light',
    dark: 'Dark',
  },
  settings: {
    title: 'Settings',
    language: 'Language · Sprache',
    languages: { device: 'As the device · wie das Gerät', en: 'English', de: 'Deutsch' },
    length: 'Lengths and diameters',
    lengths: { mm: 'Millimetres', in: 'Inches' },
    temperature: 'Temperature',
    temperatures: { '°C': 'Degrees Celsius', '°F': 'Degrees Fahrenheit' },
    torque: 'Torque of pins',
    torques: { N·m: 'Newton metres', in·lb: 'Inch-pounds' },
    note: 'These hold on this device alone; records and files stay metric. The page is loaded anew with them.',
    use: 'Use these',
    busy: 'Language and units can be chosen once you leave this page: what is under way here would be broken off.',
  },
  tension:
    'A piano holds many tonnes of string tension, and old plates crack. Raising the pitch or changing the wire of an old instrument can break strings, block or plate; breaking wire injures eyes and hands. These figures support a qualified technician’s judgement and never replace it.',
  stage: { 'as-found': 'as found', 'as-left': 'as left' },
  strings: {
    'centre strings': 'Centre strings, behind a felt strip',
    'open unisons': 'Open unisons',
    'single strings': 'Single strings, one after the other',
  },
  stringPosition: ['whole unison', 'left string', 'centre string', 'right string'],
  noteStates: { missing: 'missing', kept: 'kept', doubtful: 'doubtful', skipped: 'skipped' },
  noteStrip: (kept: number, doubtful: number, all: number) =>
    `${kept} of ${all} notes kept, ${doubtful} doubtful, ${all - kept - doubtful} without a take`,
  write: {
    'storage-full':
      'This device has no room left, so the last entry was not stored; everything stored before is safe. Free some space (other pages, downloads, photographs), then do it again.',
    closed:
      'The records were closed, perhaps because a newer version was opened in another tab. What was stored is safe. Load this page again, then do the last step once more.',
    'not-a-record': 'This entry does not hold together and was not stored:',
    failed: 'The entry was not stored. The browser says:',
  },
  newVersion: {
    ready: 'A new version is ready.',
    load: 'Load it now',
    later: 'Later',
  },
  otherPages: {
    word: 'Another page:',
    blocked:
      'This program is open in another tab in the middle of something: a survey, or a form. Finish there or close that tab; this page then goes on by itself.',
    closedTitle: 'A newer version was opened in another tab',
    closed: 'It has taken over the records. Everything stored is safe. Load this page again to go on.',
    surveyTaken:
      'This survey is being recorded in another tab. Two pages must not write into one survey. Go on there, or close that tab; this page then goes on by itself.',
  },
  unavailable: {
    title: 'The records cannot be opened',
    again: 'Load the page again',
    next: 'Nothing was deleted. If it goes on, close other tabs with this page, leave private browsing, or restart the browser.',
  },
  readFault: (detail: string) => `The records could not be read: ${detail} Load the page again.`,
  broken: {
    title: 'This page stumbled',
    what: 'A fault in the program stopped this screen. Everything stored is safe: records are written the moment they are kept.',
    again: 'Try this screen again',
    detail: 'What the program said',
  },
  gone: {
    title: 'Nothing stands at this address',
    what: 'The link may be old, mistyped, or belong to the records of another device.',
    back: 'Go to the workshop',
  },
  damaged: (count: number) =>
    `${count === 1 ? 'One record' : `${count} records`} could not be read and ${count === 1 ? 'is' : 'are'} left out here. Nothing was deleted.`,
};
