/** Words about the room and the microphone's place, before the first note. Levels come as figures in dB below full scale. */
export const roomTexts = {
  title: 'The room, before you start',
  listening: 'Listening to the quiet. Two seconds without a sound, please.',
  strikeOnce: 'Now play your loudest note: its level is judged here.',
  noSignal: {
    sentence: 'Nothing comes in, not even the room.',
    remedy: 'Is the microphone muted, or is it another one that the browser listens to?',
  },
  noise: {
    quiet: (db: string) => `The room is quiet (${db} dB).`,
    audible: (db: string) => `The room can be heard (${db} dB).`,
    loud: (db: string) => `The room is loud (${db} dB).`,
  },
  noiseRemedy: {
    quiet: {},
    audible: { remedy: 'Good enough for most notes.' },
    loud: { remedy: 'Close windows, stop fans, or bring the microphone nearer to the strings.' },
  },
  treble: (note: string) => ({
    sentence: `Its hiss may drown the notes from ${note} up.`,
    remedy: 'A microphone nearer to the strings hears more of them.',
  }),
  hum: (hz: string, db: string) => ({
    sentence: `The mains hums at ${hz} Hz (${db} dB).`,
    remedy: 'Move the microphone and its cable away from power supplies and lamps, or run the device from its battery.',
  }),
  blowClipped: {
    sentence: 'That blow was clipped.',
    remedy: 'Turn the input down, or move the microphone away.',
  },
  blowQuiet: (db: string) => ({
    sentence: `That blow reached only ${db} dB: too quiet.`,
    remedy: 'Turn the input up, or bring the microphone nearer.',
  }),
  blowGood: (db: string) => ({ sentence: `That blow reached ${db} dB: a good level.` }),
};
