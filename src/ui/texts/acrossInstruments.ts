/** Words for what held, and for how long, across instruments. */
export const heldTexts = {
  title: 'What held, and for how long',
  link: 'What held, and for how long',
  subtitle: 'Work on blocks, wire and pins, and what became of it.',
  yearsSince: 'Years since the work',
  work: { 'block-work': 'work on the block', restrung: 'restrung', 'pin-replaced': 'pins replaced' },
  workAnd: ', ',
  blockUnknown: 'Kind of block not known',
  noteRange: (range: string) => `on ${range}`,
  empty: {
    instruments: 'No instrument is recorded yet.',
    work: 'Nothing to look back on yet: years are counted from restringing, replaced pins and work on the block, and none of that is entered. Below, each instrument leads to where it is entered.',
    unjudged:
      'No work on these instruments can be judged yet. What each of them still needs stands below, with the way there.',
  },
  progress: {
    title: 'Looking back',
    reading: (name: string) => `Reading the records of ${name} …`,
    judging: (name: string, done: number, all: number) => `${name}: visit ${done} of ${all}`,
    jobs: (done: number, all: number) => `${done} of ${all} ${all === 1 ? 'piece of work' : 'pieces of work'} judged`,
    why: 'Every visit since the work is judged with what was known on that day. It takes some seconds an instrument, and is remembered on this device.',
    stop: 'Stop',
    stopped: 'Stopped. What was judged until then is shown.',
    goOn: 'Go on',
    failed: (name: string, detail: string) => `${name} could not be judged: ${detail}`,
  },
  choices: {
    alarm: 'No longer holding from',
    alarms: { watch: 'Watch or giving way', 'giving way': 'Giving way only' },
    grouping: 'Taken together by',
    groupings: { block: 'Kind of block', work: 'What was done' },
    whose: 'Instruments',
    own: 'Your own',
    invented: 'The invented ones',
  },
  spans: {
    title: 'Years since the work: watched, and how it stood at the end',
    name: 'Years watched',
    unwatched: 'not watched yet',
    watched: 'watched',
    ends: { holding: 'still holding when last seen', watch: 'watch', 'giving way': 'giving way' },
    summary: (count: number) =>
      `For ${count} ${count === 1 ? 'piece' : 'pieces'} of work, the years since then that were watched and how the block stood at the end. The same is in the table below.`,
    detail: (work: string, years: string, end: string) => `${work} · ${years}, ${end}`,
  },
  table: {
    caption: 'Each piece of work, with the years it was watched',
    instrument: 'Instrument',
    block: 'Block',
    work: 'Work',
    doneOn: 'Done on',
    watched: 'Watched',
    years: 'Years after the work',
    result: 'How it stands',
    from: (from: string, to: string) => `${from} to ${to}`,
    yearsFrom: (from: string, to: string) => `${from} to ${to}`,
    held: 'still holding',
    takenBack: (date: string) => `still holding; a doubt of ${date} was taken back`,
    ended: {
      watch: (date: string) => `watch since ${date}`,
      'giving way': (date: string) => `giving way since ${date}`,
    },
  },
  group: {
    title: (name: string, count: number) => `${name}: ${count} ${count === 1 ? 'instrument' : 'instruments'}`,
    without: 'No rate claimed',
    few: (fewest: number) => `Fewer than ${fewest}: each is listed above by itself.`,
    small:
      'Small numbers say little: of four instruments that all held, the share of all such that hold may still be as low as four in ten.',
    unknown:
      'The kind of block is not entered, or it was changed after this work: no rate is claimed. Enter the kind with the instrument.',
    late: 'There was never a time when three of them were watched at once: no rate is claimed.',
  },
  share: {
    name: (group: string) => `Share that holds, ${group}`,
    title: (group: string) =>
      `Share that still holds (${group}), with 95 % limits; a stroke where one was last seen holding`,
    summary: (group: string, sentence: string) =>
      `Share of ${group} that still holds over the years since the work. ${sentence}`,
    atRisk: 'Under observation:',
    from: (years: string) =>
      `The curve begins ${years} after the work, when three were watched at once: it is the share of those that held until then.`,
    earlier: (count: number) =>
      `${count} ${count === 1 ? 'piece' : 'pieces'} of work no longer held before that and ${count === 1 ? 'is' : 'are'} not in it.`,
    sentence: (years: string, share: string, uncertainty: string, low: string, high: string) =>
      `After ${years}: ${share} hold (standard uncertainty ${uncertainty}; 95 % limits ${low} to ${high}).`,
    noneEnded: (years: string, low: string) =>
      `None has let go in ${years} of watching; the share that holds is at least ${low} at 95 %.`,
    caption: 'Share that holds, at each date at which something no longer held',
    years: 'Years',
    observed: 'Under observation',
    ended: 'No longer held',
    holds: 'Share that holds',
    uncertainty: 'Standard uncertainty',
    limits: '95 % limits',
    limitsOf: (low: string, high: string) => `${low} to ${high}`,
  },
  missing: {
    title: 'What is missing',
    note: 'A piece of work with its date, and some three visits with as-left and as-found surveys after it.',
    none: 'Nothing: every piece of work that is entered could be judged.',
    work: 'no restringing, replaced pins or work on the block is entered.',
    enterWork: 'Enter it under “Work done”',
    visits: (work: string, date: string, visits: number) =>
      `${work} on ${date}, and ${visits === 0 ? 'no visit with readings since then' : `only ${visits} ${visits === 1 ? 'visit' : 'visits'} with readings since then`}.`,
    beginVisit: 'Begin a visit',
    blockKind: 'the kind of its pin block is not entered; instruments are compared by it.',
    enterBlockKind: 'Enter the kind',
  },
  method: {
    title: 'How to read this',
    lines: [
      'Years count from the day of the work. An instrument counts from the visit before its first verdict, as before that nothing could have been found.',
      'An end is dated by the visit that showed it; it came about since the visit before. One that still holds counts up to its last visit.',
      'A verdict at every visit sounds a false alarm sooner or later. An alarm that the last verdict takes back does not count, unless work was done in between.',
      'Shares are the product-limit estimate of Kaplan and Meier (1958) with Greenwood’s uncertainty; their limits are made for small numbers (Fay, Brittain and Proschan 2013).',
      'Instruments that come back to the same workshop are no random sample, and those that hold may be visited less. A difference between two groups is a question, not an answer.',
    ],
  },
};
