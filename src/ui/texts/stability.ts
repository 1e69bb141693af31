/** Words of an instrument's stability page: the verdict on its pin block, why, and how its strings move. */
export const stabilityTexts = {
  title: 'Stability',
  open: 'Look at its stability',
  judging: {
    working: (readings: number) => `Judging ${readings} readings …`,
    cancel: 'Stop',
    cancelled: 'Stopped before the judgement was ready.',
    again: 'Judge again',
    failed: (detail: string) => `The judgement failed: ${detail} The records are safe.`,
  },
  empty: {
    noVisit:
      'Nothing to judge yet. A pin shows whether it holds between two visits: record what you leave, and next time what you find.',
    noReading:
      'The visits hold no reading that can be used yet. Record a survey: as found before tuning, as left after it.',
    begin: 'Begin a visit',
    noInterval:
      'Nothing to compare yet. Record an as-left survey at one visit and an as-found survey at a later one; the change between them appears here.',
  },
  leftOut: {
    unusable: (count: number) =>
      `${count === 1 ? 'One take' : `${count} takes`} of too poor quality ${count === 1 ? 'is' : 'are'} left out.`,
    'string-unknown': (count: number) =>
      `${count === 1 ? 'One take' : `${count} takes`} of a single string without its position ${count === 1 ? 'is' : 'are'} left out.`,
  },
  verdict: {
    title: 'The pin block',
    note: 'Weather, settling and the tuner’s own errors are taken out before a pin is blamed.',
    states: {
      holding: 'Holding',
      watch: 'Watch',
      'giving way': 'Giving way',
      'not enough evidence': 'Not enough evidence yet',
    },
    holding: (speed: string) =>
      `No string goes flat by itself: slips faster than ${speed} are ruled out for every string, at 95 %.`,
    watch: (what: string, sure: string) => `${what} may be going flat by itself (probability ${sure}).`,
    watchPlain: 'Something may be going flat by itself, but it is not certain.',
    givingWay: (what: string, sure: string) =>
      `${what} lost pitch by themselves, visit after visit (probability ${sure}).`,
    notEnough: 'The readings so far cannot tell a slipping pin from weather and chance.',
    zone: (range: string) => `The notes ${range}`,
    singlePins: (count: number) => (count === 1 ? 'one string' : `${count} single strings`),
    and: ' and ',
    reasons: 'Why',
    against: 'What speaks against it',
    nothingAgainst: 'Nothing in the readings.',
    suspect: (string: string, rate: string, sure: string) => `${string}: ${rate}, probability ${sure}.`,
    outliers: (count: number) =>
      `${count === 1 ? 'One single reading' : `${count} single readings`} that no slow cause explains ${count === 1 ? 'was' : 'were'} set aside.`,
    grounds: {
      'zone-slips': (range: string, speed: string, isAccelerating: boolean) =>
        `${range} go flat together by ${speed}${isAccelerating ? ', faster each year' : ''}.`,
      'pins-slip': (names: string, count: number) =>
        `${names} ${count === 1 ? 'goes flat by itself' : 'go flat by themselves'}, again and again.`,
      'pins-suspected': (names: string) => `${names} went flat more than chance lets expect, but not yet for certain.`,
      'no-string-slips': (speed: string) =>
        `No string goes flat by itself: slips faster than ${speed} are ruled out at 95 %.`,
      'slip-could-hide': (speed: string) =>
        `No string stands out, but a slip of up to ${speed} could still hide in the scatter; further visits would narrow it.`,
      'never-compared': 'No as-left survey is followed by an as-found one: record both at the next visits.',
      'has-to-repeat': (count: number) =>
        `A slip has to repeat itself; ${count} more ${count === 1 ? 'visit' : 'visits'} with as-found and as-left would tell.`,
      'few-notes': (count: number) =>
        `${count} ${count === 1 ? 'note is' : 'notes are'} too few to tell a string from the whole instrument; survey the compass.`,
      'too-short': (years: string) =>
        `${years} are too short to tell a slip from the season; come back in half a year.`,
      compared: (count: number, years: string) =>
        `${count} ${count === 1 ? 'interval' : 'intervals'} between an as-left and the next as-found, ${years} in all.`,
      'others-steady': (count: number, speed: string) =>
        `The other ${count} strings keep their places, slips above ${speed} ruled out.`,
      'pins-open': (names: string) => `Except ${names}, of which it cannot be said yet: the next visits will tell.`,
      'season-inferred': 'Humidity was not read often enough, so the season was inferred from the strings themselves.',
      /** How fast it falls. */
      pin: (name: string, speed: string) => `${name} (${speed})`,
      more: (count: number) => ` and ${count} more`,
    },
    ruledOut: 'Ruled out',
    ruledOutAbove: (speed: string) => `Slips faster than ${speed}, for every string that is not named, at 95 %.`,
    ruledOutNothing: 'No slip can be ruled out yet.',
    nextTitle: 'What would settle it',
    nextNothing: 'Nothing is open: go on recording both surveys at each visit.',
    next: {
      'both-surveys': 'Record both surveys: as left at this visit, as found at the next.',
      'more-intervals': (count: number) =>
        `${count === 1 ? 'One more visit' : `${count} more visits`} with both surveys: a slip has to repeat itself before it counts.`,
      'more-time': (months: number) =>
        `More time: come back in ${months === 1 ? 'a month' : `${months} months`}, so that a season lies between.`,
      narrow: (count: number, months: number, speed: string) =>
        `${count === 1 ? 'One more visit' : `${count} more visits`}, ${months === 1 ? 'a month' : `${months} months`} apart as before, would rule out slips of ${speed} or show them.`,
      narrowLong: (speed: string) =>
        `Slips as slow as ${speed} would take many more visits to rule out; longer intervals between visits help most.`,
      'note-humidity': 'Note the humidity at every visit: then weather and wood are told apart sooner.',
      torqueFlagged: (pins: string) =>
        `Measure the torque of the pins that slip, and of their neighbours for comparison: ${pins}.`,
      torqueDoubtful: (pins: string) => `A torque reading would tell more about the most doubtful pins: ${pins}.`,
    },
    threshold: 'A slip that matters',
    thresholdHint:
      'Kept with this instrument; 1 cent a year where nothing else is chosen. At 1 cent a year a string stands 5 cents off its unison after five years, which an owner hears. A concert hall may want less, a practice room may bear more.',
  },
  lifeLine: {
    title: 'Life line',
    note: 'Median of all strings, bars of two standard uncertainties. Lines join what was left to what the next visit found.',
    chartTitle: 'Overall pitch in cents against A4 = 440 Hz, and humidity in % RH below',
    chartTitleAt: (humidity: string) => `Overall pitch in cents against A4 = 440 Hz, as it would stand at ${humidity}`,
    name: 'Life line',
    found: 'as found',
    left: 'as left',
    humidity: 'humidity',
    show: 'Pitch',
    choices: { read: 'as read', corrected: 'at one humidity' },
    humidityField: 'Humidity',
    humidityFault: 'Give a humidity between 10 and 90.',
    humidityUnknown: 'The strings’ answer to humidity is not known yet, so pitch cannot be moved to another humidity.',
    summary: (visits: number, from: string, to: string) =>
      `Overall pitch at ${visits} visits from ${from} to ${to}, as found and as left, with the work done. The numbers can be saved as CSV.`,
    humiditySummary: (visits: number) => `Humidity at ${visits} visits.`,
    workTitle: 'Work done',
  },
  map: {
    title: 'All strings, all visits',
    note: 'Season, settling and what the whole instrument did are taken out. What is left is each string’s own.',
    chartTitle: 'Own drift of each string in cents: flat is brown and hatched, sharp is blue and dotted',
    name: 'Map of own drift',
    kind: 'Show',
    kinds: { 'added-up': 'since the first visit', 'each-interval': 'each interval by itself' },
    position: 'Strings',
    label: 'Choose a string along the compass',
    hint: 'Choose a string to see its years below: click it, or use the arrow keys here.',
    marks: { flag: 'flagged pin', bracket: 'failing zone', section: 'strut or bass break' },
    cell: (string: string, visit: string, cents: string) => `${string}, ${visit}: ${cents}`,
    cellEmpty: (string: string, visit: string) => `${string}, ${visit}: not compared`,
    column: (string: string, cents: string) => `${string}, ${cents} by the last visit`,
    columnEmpty: (string: string) => `${string}, never compared`,
    even: (cents: string) => `within ±\u2009${cents}, or within two standard uncertainties`,
    range: (from: string, to: string) => `${from} to ${to}`,
    below: (to: string) => `${to} or flatter`,
    above: (from: string) => `${from} or sharper`,
    flagged: 'flagged',
  },
  span: {
    title: 'From visit to visit',
    note: 'Above: as read, with what season and the whole instrument account for. Below: what is left. Bars and band show two standard uncertainties.',
    from: 'From',
    to: 'To',
    readTitle: 'Change in cents, as read, and the part of season and whole instrument',
    whole: 'season and whole instrument',
    ownTitle: 'Change in cents, season and whole instrument taken out',
    readName: 'Change',
    ownName: 'Own change',
    summary: (count: number, from: string, to: string) =>
      `Change of ${count} strings from ${from} to ${to} in cents, with the part that season and whole instrument account for.`,
    ownSummary: (count: number) =>
      `What is left of the change of ${count} strings, in cents, with two standard uncertainties.`,
    none: 'No string was read at both ends of all the intervals between these visits. Choose two visits that lie closer together.',
    gaps: (count: number) =>
      `${count === 1 ? 'One interval' : `${count} intervals`} between them ${count === 1 ? 'has' : 'have'} no baseline and ${count === 1 ? 'is' : 'are'} left out.`,
    tunings: 'Tunings in between are taken out: only what happened between a visit and the next one is added up.',
  },
  string: {
    title: 'One string',
    note: 'Bars show two standard uncertainties of what was added up since its first reading.',
    choose: 'String',
    previous: 'String to the left',
    next: 'String to the right',
    chartTitle: (string: string) => `Own drift of ${string} in cents since it was first read`,
    name: (string: string) => `Years of ${string}`,
    offsets: 'own drift',
    line: 'its slip, with two standard uncertainties',
    rate: 'Slip',
    probability: 'Probability that it slips',
    possible: 'Ruled out',
    fasterThan: (speed: string) => `falls faster than ${speed}, at 95 %`,
    response: 'Answer to humidity',
    summary: (string: string, count: number, rate: string) =>
      `Own drift of ${string} at ${count} visits, in cents, with the line of its slip: ${rate}.`,
    none: (string: string) =>
      `${string} was not yet read at both ends of an interval, or was replaced since. Its years begin with the next one.`,
  },
  pins: {
    title: 'Pins and zones',
    note: 'Negative: the string goes flat by itself. The surest come first.',
    caption: 'Strings that may slip',
    allCaption: 'All strings',
    all: (count: number) => `All ${count} strings`,
    none: 'No string is likelier than 30 % to slip.',
    string: 'String',
    rate: 'Cents a year',
    probability: 'Probability',
    ruledOut: 'Falls ruled out beyond',
    judgement: 'Judgement',
    judgements: { flagged: 'slips', doubtful: 'look again', steady: 'steady', unknown: 'too little evidence' },
    more: 'More',
    show: 'its years',
    showLabel: (string: string) => `Years of ${string}`,
    zones: 'Zones that go flat together',
    zone: 'Notes',
    accelerating: 'Faster each year',
    yes: 'yes',
    no: 'no',
    noZone: 'No zone of neighbouring notes goes flat together.',
    outliers: (count: number) => `${count} single ${count === 1 ? 'reading' : 'readings'} that no slow cause explains`,
    outliersCaption: 'Single readings that no slow cause explains',
    visit: 'Visit',
    cents: 'Cents',
    why: 'Why',
    because: {
      'stood-off-once': (cents: string) =>
        `It stood ${cents} off its neighbours as left, and only then: mis-set, or a wrong take.`,
      'found-off-once': {
        sharp: (cents: string) =>
          `It was found ${cents} sharp of what its neighbours did, once: a wrong take, or moved by hand.`,
        flat: (cents: string) =>
          `It was found ${cents} flat of what its neighbours did, once: a wrong take, or moved by hand.`,
      },
      'left-off': (cents: string) => `Left ${cents} off where this string is usually left: mis-set, or a wrong take.`,
    },
  },
  humidity: {
    title: 'Answer to humidity',
    note: 'How far a string moves for each % RH, by itself. Bars show two standard uncertainties.',
    chartTitle: 'Cents per % RH along the compass',
    name: 'Answer to humidity',
    summary: (count: number) =>
      `Answer of ${count} strings to humidity in cents per % RH, with two standard uncertainties.`,
    unknown:
      'Not known yet. It takes at least three intervals with the humidity noted at both ends, and a change of 3 % RH or more in one of them.',
    middle: (response: string) => `In the middle of the compass a string moves by ${response}.`,
    split: (difference: string) =>
      `Right strings answer by ${difference} more than left strings of the same notes: humidity moves unisons apart.`,
  },
  newWire: {
    title: 'New wire',
    since: (date: string) =>
      `Restrung on ${date}. New wire stretches and beds itself in at its bends, and the whole instrument falls with it: most in the first months, less each month, for two or three years. That is settling; no pin is blamed for it.`,
    notSeen:
      'How far it has fallen shows once a visit’s as-left survey is followed by the next one’s as-found. Expect to tune it more often in its first year.',
    fellSoFar: (cents: string) => `So far it fell by ${cents}, as read, the weather’s part included.`,
    roseSoFar: (cents: string) => `So far it rose by ${cents}, as read, the weather’s part included.`,
    toCome:
      'More settling is to come: expect to tune it more often in its first year, and record both surveys each time.',
    firstYear: (cents: string) => `In its first year it fell by about ${cents}.`,
    falling: (speed: string) =>
      `At the last visit it was still falling, by about ${speed}; the coming year should bring less than that.`,
    settled: (speed: string) => `By the last visit it had settled: it falls by less than ${speed}.`,
  },
  forecast: {
    title: 'What comes next',
    note: 'If it stays in its room and nothing is done to it.',
    none: 'There is nothing to reckon from yet: record an as-left survey.',
    limit: 'Due when strings are off by',
    limitHint: 'Root mean square of all strings’ departures from where they were left, in cents. Kept on this device.',
    limitLabel: (cents: string) => `${cents} on average`,
    season: (date: string, kind: string, humidity: string) => `Next ${kind} time: about ${date}, at ${humidity}.`,
    kinds: { driest: 'driest', dampest: 'dampest' },
    movement: (median: string, rms: string, low: string, high: string) =>
      `The median string then stands ${median} from where it was left; strings are off by ${rms} on average (between ${low} and ${high} in two cases of three).`,
    due: (date: string) => `Worth coming back: about ${date}`,
    between: (early: string, late: string) => `; between ${early} and ${late} in two cases of three.`,
    from: (early: string) => `; from ${early} at the earliest in two cases of three.`,
    notDue: 'The limit is not likely to be passed within three years.',
    notDueBut: (early: string) =>
      `The limit is not likely to be passed within three years, but may be from ${early} on.`,
    passed: 'That day has passed.',
    climateRecord: (count: number, mean: string, swing: string) =>
      `From ${count} humidity readings here: ${mean} through the year, ${swing} either way.`,
    climateAssumed:
      'Too few humidity readings through the year: a heated room of 45 ± 8 % RH, driest in February, is assumed, and the uncertainty is wide.',
    responseAssumed: 'The strings’ answer to humidity is the usual one, since it is not known for this instrument yet.',
    settling: 'Settling of new wire is in it, at its present rate.',
    chartTitle: 'Strings off from where they were left, root mean square in cents',
    name: 'Forecast',
    expected: 'month by month',
    point: (date: string, cents: string, low: string, high: string) => `${date}: ${cents} (${low} to ${high})`,
    curve: 'expected, with two cases of three',
    limitMark: 'due',
    summary: (from: string, to: string) =>
      `Expected root mean square departure of all strings from ${from} to ${to}, in cents.`,
  },
  torque: {
    title: 'Torque against slip',
    note: 'The latest visit at which pins were read. A loose pin need not slip, and a slipping one need not be loose.',
    empty:
      'No torque was read yet. Readings of the pins, in N·m, stand here beside their slips: measure the doubtful pins at the next visit.',
    open: 'All torque readings',
  },
  whatIf: {
    title: 'What would I see if …',
    note: 'Invented pianos with a known fault go through the same judgement. Nothing is written to the records.',
    fault: 'The fault',
    faults: { pins: 'single pins slip', zone: 'a zone gives way', none: 'nothing is wrong' },
    pinCount: 'How many pins',
    noteCount: 'How many notes',
    rate: 'How fast, cents a year',
    visits: 'Visits a year',
    noise: 'Readings',
    noises: { '0.5': 'twice as good as usual', '1': 'as usual', '2': 'half as good as usual' },
    humidity: 'Humidity',
    humidities: { noted: 'noted', unnoted: 'not noted' },
    start: 'Try it on 20 pianos',
    progress: (done: number, all: number) => `${done} of ${all} pianos judged`,
    stop: 'Stop',
    failed: (detail: string) => `The trial failed: ${detail}`,
    found: (half: string, most: string) => `Half of the pianos are found out after ${half}, nine in ten after ${most}.`,
    foundHalf: (half: string) =>
      `Half of the pianos are found out after ${half}; nine in ten are not within eight years.`,
    foundSeldom: 'Fewer than half of the pianos are found out within eight years.',
    steady: (share: string) => `After eight years ${share} of the sound pianos are rightly called holding.`,
    wrong: (share: string) => `In ${share} of them a sound string is blamed by then.`,
    caption: (count: number) => `Shares of ${count} invented pianos`,
    years: 'After',
    foundShare: 'Found',
    namedShare: 'Strings at fault that are named',
    warnsShare: 'Warned at all',
    holdsShare: 'Called holding',
    falseShare: 'Sound string blamed',
    name: 'What would I see if',
  },
  line: {
    title: 'Stability',
    waiting: 'Working it out …',
    none: 'Nothing to judge yet.',
  },
};
