/** Words about sample clocks and their calibration. */
const ORDINARY =
  'Clocks of sound devices are commonly some tens of ppm off. A fast clock makes every note read flat, all alike; 100 ppm are 0.17 cents.';

export const clockTexts = {
  title: 'Check this microphone’s clock',
  checkLink: 'Check this microphone’s clock',
  reference: {
    title: 'The reference',
    note: ORDINARY,
    kind: 'What sounds',
    kinds: { tone: 'A reference tone, from a device of its own', fork: 'A tuning fork' },
    frequency: 'Its frequency',
    uncertainty: 'How sure that is (one standard uncertainty)',
    uncertaintyHint: { tone: 'What its maker states.', fork: 'Forks are sold as good to some tenths of a hertz.' },
    statedAt: 'It has that frequency at',
    temperature: 'How warm it is now',
    temperatureHint:
      'A steel fork falls by 0.011 % a degree, which is 0.19 cents: leave it in the room a while, and hold it by its stem alone.',
    toneCaution:
      'The tone must not come from this device’s own loudspeaker: it would be made by the very clock that it is to check.',
    faults: {
      'frequency-out-of-range': 'Give the frequency as a number from 100 to 4000.',
      'uncertainty-out-of-range': 'Give the uncertainty as a number from 0 to 10.',
      'temperature-out-of-range': 'Give the temperature as a number from −10 to 45.',
      'temperature-not-in-fahrenheit': 'Give the temperature as a number from 14 to 113.',
    },
  },
  listen: {
    title: 'Listening',
    note: 'Nothing has to be pressed when it sounds.',
    action: 'Listen for it',
    again: 'Listen again',
    stop: 'Stop',
    asking: 'Asking for the microphone. Answer the browser’s question to go on.',
    waiting: 'Listening. Let it sound near the microphone for at least ten seconds, fifteen if it can.',
    heard: (seconds: number) => `Heard for ${seconds} s …`,
    progress: 'Seconds heard',
    faults: {
      'too-short': 'It did not sound long enough. Let it sound for at least ten seconds.',
      'not-heard': 'Nothing was heard near that frequency. Is it the right one, and is it near enough?',
      unsteady:
        'It did not sound evenly: it beat, was touched or moved, or sound was lost. Put it down on something that does not rattle, and let it sound again.',
    },
  },
  result: {
    title: 'The clock',
    fast: 'fast',
    slow: 'slow',
    sentence: (ppm: string, word: string) => `This microphone’s clock runs ${ppm} ${word}.`,
    notTold: (ppm: string, word: string) => `No offset can be told: ${ppm} ${word}.`,
    pitch: (cents: string, word: string) => `Pitches read ${cents} ${word}, all notes alike.`,
    flat: 'flat',
    sharp: 'sharp',
    even: 'That is within its uncertainty. A surer reference would say more.',
    kept: (name: string) =>
      `Kept for “${name}”. Surveys recorded with it say so from now on; no figure is changed by it.`,
    unnamed: 'The browser gives this microphone no name, so surveys cannot be told to be its own.',
  },
  earlier: {
    title: 'Earlier checks',
    caption: 'Checks of microphones on this device, the latest first',
    when: 'When',
    microphone: 'Microphone',
    against: 'Against',
    offset: 'Clock',
    pitch: 'Pitches read',
    fork: (hz: string, celsius: string) => `fork, ${hz} at ${celsius}`,
    tone: (hz: string) => `tone, ${hz}`,
  },
  survey: {
    title: 'The microphone’s clock',
    note: 'It moves all notes alike.',
    againstSystem: (ppm: string, word: string, cents: string) =>
      `While this was recorded it ran ${ppm} ${word} against this device’s own clock, which is ${cents}. That clock may be some tens of ppm off itself.`,
    noEvidence:
      'There is not enough evidence how it ran against this device’s own clock; half a minute of listening is the least.',
    calibrated: (when: string, against: string, ppm: string, word: string) =>
      `On ${when} it was checked against a ${against} and ran ${ppm} ${word}.`,
    reads: (cents: string, word: string) =>
      `So pitches read ${cents} ${word}; the figures above are as measured, not corrected.`,
    notTold: 'That is within its uncertainty: the pitches may be right as they are.',
    notCalibrated: 'It had not been checked against a reference then.',
    kinds: { tone: 'reference tone', fork: 'fork' },
  },
};
