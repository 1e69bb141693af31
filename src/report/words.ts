/**
 * Every word of the pages for owners and colleagues, in one table: another language is another object of the same shape. Sentences that
 * hold a figure are functions, so that each language orders its words as it likes.
 */
import type { EventKind, InstrumentKind } from '../piano/instrument.ts';
import type { DecisionChoice } from '../piano/stringingRecords.ts';
import type { VerdictState } from '../stability/drift/verdict.ts';

const kinds: Record<InstrumentKind, string> = {
  grand: 'Grand piano',
  upright: 'Upright piano',
  square: 'Square piano',
  other: 'Piano',
};

const eventKinds: Record<EventKind, string> = {
  restrung: 'Restrung',
  'string-replaced': 'String replaced',
  'pin-replaced': 'Tuning pin replaced',
  'block-work': 'Work on the pin block',
  moved: 'Moved',
  tuned: 'Tuned',
};

const verdictTitles: Record<VerdictState, string> = {
  holding: 'It holds its pitch',
  watch: 'Worth watching',
  'giving way': 'Part of it is giving way',
  'not enough evidence': 'Not enough evidence yet',
};

const decisions: Record<DecisionChoice, string> = {
  leave: 'left as it is',
  'bridge work': 'work at the bridge',
  'replace wire': 'new wire',
  'replace pin': 'a new tuning pin',
  'look again': 'another look',
};

export const englishReportWords = {
  language: 'en-GB',
  demonstration: 'Invented example: the piano, its people and every figure were made up by a program.',
  string: ['', 'left string', 'centre string', 'right string'],
  /** Names in a row. */
  list: (names: readonly string[]): string =>
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`,
  andMore: (count: number) => `${count} more`,
  pageTitle: (instrument: string) => `${instrument}: how it has kept its pitch`,
  upTo: (date: string) => `As of the visit on ${date}`,
  noVisitYet: 'No visit has been recorded yet.',
  instrument: {
    kinds,
    built: (year: number) => `built ${year}`,
    serial: (number: string) => `number ${number}`,
    compass: (range: string, count: number) => `${range}, ${count} notes`,
    pinBlock: 'Pin block',
    owner: 'Owner',
    place: 'Where it stands',
  },
  verdict: {
    title: 'The verdict',
    titles: verdictTitles,
    holding: (rate: string) =>
      `Its strings stay where they are set. A string that goes flat by itself faster than ${rate} a year can be ruled out: we are 95 % sure that there is none.`,
    holdingSeason: 'What it does move comes with the season and goes back with it.',
    zone: (range: string, rate: string) => `The strings from ${range} go flat by themselves, about ${rate} a year`,
    zoneOfOneNote: (note: string, rate: string) => `The strings of ${note} go flat by themselves, about ${rate} a year`,
    faster: ', and faster from year to year',
    zoneCertainty: (probability: string) => `; we are ${probability} sure of it.`,
    pins: (names: string, isOne: boolean) =>
      `${names} ${isOne ? 'goes' : 'go'} flat by ${isOne ? 'itself' : 'themselves'}, again and again.`,
    pin: (name: string, rate: string, probability: string) => `${name} (${rate} a year, ${probability} sure)`,
    notTheSeason: 'The season does not explain it: the movement of the whole piano has been taken out.',
    suspects: (names: string, isOne: boolean) =>
      `${names} ${isOne ? 'has' : 'have'} gone flat more than chance would explain, but it is not certain yet.`,
    others: (count: number, rate: string) =>
      count === 1
        ? `The other string keeps its place: we are 95 % sure that it does not slip faster than ${rate} a year.`
        : `The other ${count} strings keep their places: we are 95 % sure that none of them slips faster than ${rate} a year.`,
    open: (names: string, isOne: boolean) =>
      `Of ${names} it cannot be said yet, though ${isOne ? 'it is' : 'they are'} not thought to slip; the next visits will tell.`,
    noComparison:
      'Nobody has yet measured how the piano was left and, at a later visit, how it was found again. Only that shows whether strings stay.',
    tooLittle: (count: number, length: string) =>
      `So far ${count === 1 ? 'one comparison' : `${count} comparisons`} between how it was left and how it was found again ${count === 1 ? 'covers' : 'cover'} ${length}. That is too little to tell a slipping tuning pin from the season.`,
    couldHide: (rate: string) =>
      `No string stands out, but a slip of up to ${rate} a year could still hide in the scatter.`,
    counted: (count: number, length: string) =>
      `This rests on ${count === 1 ? 'one comparison' : `${count} comparisons`} of how it was left with how it was found again, ${length} in all.`,
    humidityUnknown: 'Humidity was not noted often enough; the season was inferred from the strings themselves.',
    newWire: {
      since: (date: string) =>
        `It got new wire on ${date}. New wire gives for two or three years, most in the first months, and the whole piano goes flat with it: that is usual, and no fault.`,
      toCome: 'Most of that is still to come: in the first year it needs tuning more often.',
      fellSoFar: (cents: string) => `So far it has gone flat by ${cents}, the weather’s part included.`,
      roseSoFar: (cents: string) => `So far it has gone sharp by ${cents}, the weather’s part included.`,
      firstYear: (cents: string) => `In its first year it went flat by about ${cents}.`,
      falling: (rate: string) => `Now it goes flat by about ${rate} a year; next year it should be less.`,
      settled: 'Now the wire has settled.',
    },
  },
  course: {
    title: 'How it kept its pitch',
    chartSummary: (count: number, from: string, to: string, flattest: string, sharpest: string) =>
      `Chart of ${count === 1 ? 'one comparison' : `${count} comparisons`} from ${from} to ${to}: added up, the middle string moved between ${flattest} and ${sharpest} from where it was first left.`,
    humidityTitle: 'Humidity of the room, % RH',
    sharper: 'sharper',
    flatter: 'flatter',
    cents: 'cents',
    wholePiano: 'the whole piano (middle string)',
    spread: 'four strings in five',
    part: (range: string) => `strings ${range}`,
    explanation:
      'What happened between tunings, added up: where the strings would stand if nobody had tuned them. What the season does comes back; what slips stays down. 100 cents are the step from one key to the next.',
    nothing: 'A line appears here when the piano has been measured as left at one visit and as found at a later one.',
    humidityRange: (low: string, high: string) => `At our visits the humidity lay between ${low} and ${high}.`,
    noHumidity: 'Humidity was not noted.',
    response: (change: string) =>
      `When the air gets damper by 10 % RH, a typical string goes ${change}; when it dries again, the string comes back.`,
    toSharper: (cents: string) => `about ${cents} sharper`,
    toFlatter: (cents: string) => `about ${cents} flatter`,
  },
  falseBeats: {
    title: 'False beats',
    explanation:
      'A string with a false beat wavers by itself: no tuning can make it pure. Its bridge, its pin or its wire can.',
    when: 'When',
    count: 'Beating',
    judged: 'Of strings',
    before: (date: string) => `Before the work, ${date}`,
    after: (date: string) => `After the work, ${date}`,
    latest: (date: string) => `Latest survey, ${date}`,
    sameStrings: 'Before and after, the same strings are counted.',
    strings: (names: string) => `Now: ${names}.`,
    none: 'Now: none.',
    notAssessable: (count: number) =>
      `${count} more ${count === 1 ? 'string' : 'strings'} could not be judged: the tone is gone before a slow beat shows, or the recording cannot tell.`,
    nothing: 'No single strings have been recorded yet.',
  },
  advice: {
    title: 'What we recommend',
    holding: 'Tune as usual. Nothing needs to be done to the tuning pins or the pin block.',
    watch: (names: string) =>
      `At the next visit, measure as found and as left again and check the tuning pins of ${names} with a torque wrench.`,
    givingWay: (names: string) =>
      `Have a qualified technician examine the tuning pins and the pin block at ${names} before the pitch is raised or wire is changed there.`,
    notEnough: 'Have the piano measured as found and as left at each of the next visits: only that settles it.',
    steadierRoom: (low: string, high: string) =>
      `Keep the humidity of the room steadier: between ${low} and ${high}, most of the movement is the weather’s.`,
    planned: (work: string) => `Decided and not yet done: ${work}.`,
    decisions,
    plannedWork: (choice: string, strings: string) => `${choice} for ${strings}`,
    comeBackBetween: (from: string, to: string) =>
      `Next tuning: it will probably be out of tune between ${from} and ${to}, by what it has done so far.`,
    comeBackIn: (month: string) =>
      `Next tuning: it will probably be out of tune in ${month}, by what it has done so far.`,
    comeBackFrom: (from: string) => `Next tuning: not likely to be needed before ${from}, by what it has done so far.`,
    comeBackLate: (years: string) => `It will probably stay in tune for more than ${years}.`,
    assumption: 'The season of this room is not known well enough yet; a usual one was assumed.',
  },
  work: {
    title: 'What was done when',
    kinds: eventKinds,
    whole: 'the whole piano',
    nothing: 'No work has been entered.',
    remark: 'Noted',
  },
  photographs: { title: 'Photographs', uncaptioned: 'Photograph' },
  remark: { title: 'The technician’s remark', note: 'Written by the technician; not a result of the measurements.' },
  cautions: {
    title: 'Please note',
    tension:
      'A piano holds many tonnes of string tension, and old plates crack. Raising the pitch or changing the wire of an old instrument can break strings, plate or block; breaking wire injures eyes and hands.',
    judgement:
      'The figures support a qualified technician’s judgement and never replace it. Local codes and licensed practice come first.',
  },
  long: {
    title: (instrument: string) => `${instrument}: the long record`,
    instrumentRemark: 'Remark',
    zones: 'Zones that go flat together',
    outliers: 'Single readings that no slow cause explains',
    notes: 'Notes',
    note: 'Note',
    string: 'String',
    unison: 'unison',
    slip: 'Slip, cents a year',
    probability: 'Probability',
    course: 'Course',
    faster: 'faster each year',
    steady: 'steady',
    date: 'Date',
    departure: 'Departure',
    reason: 'Reason',
    because: {
      'stood-off-once': (cents: string) =>
        `stood ${cents} off its neighbours as left, and only then: mis-set, or a wrong take`,
      'found-off-once': {
        sharp: (cents: string) =>
          `found ${cents} sharp of what its neighbours did, once: a wrong take, or moved by hand`,
        flat: (cents: string) => `found ${cents} flat of what its neighbours did, once: a wrong take, or moved by hand`,
      },
      'left-off': (cents: string) => `left ${cents} off where this string is usually left: mis-set, or a wrong take`,
    },
    slips: 'What each string does by itself',
    slipChart: 'Slip in cents a year (bars: two standard uncertainties; triangles: flagged)',
    slipTable: 'Slip by string: season, settling and the common course taken out, one standard uncertainty',
    judgement: 'Judgement',
    flagged: 'slips',
    response: 'How the strings answer humidity',
    responseChart: 'Response in cents per % RH (bars: two standard uncertainties)',
    comparisons: 'From each as left to the next as found',
    comparisonNote:
      'Dots are the strings as read, bars two standard uncertainties of reading; the dashed line is what season, settling and common course account for. Dotted lines: end of the bass bridge and struts.',
    fromTo: (from: string, to: string) => `${from} to ${to}`,
    changeTable: 'Change in cents, by the date of the as-found survey',
    latest: 'The strings as last read',
    inharmonicityChart: 'Inharmonicity B',
    lifeChart: 'How long a note lives, in seconds for 60 dB',
    latestTable: 'Newest reading of each string, with one standard uncertainty',
    offset: 'Offset from equal temperament',
    inharmonicity: 'B',
    life: 'Life',
    beats: 'Beats',
    beatKinds: { none: 'none', 'false beat': 'false beat', unison: 'unison', undetermined: 'undetermined' },
    visits: 'Visits',
    by: 'By',
    humidity: 'Humidity',
    temperature: 'Temperature',
    pitchStandard: 'Pitch',
    asFound: 'Strings as found',
    asLeft: 'Strings as left',
    movement: 'Median movement',
    remark: 'Remark',
    what: 'What',
    torques: 'Torque of tuning pins',
    torque: 'Torque, N·m',
    direction: 'Turned',
    directions: { sharpwards: 'sharpwards', flatwards: 'flatwards', 'not noted': 'not noted' },
    trials: 'Trials at the bridge',
    trialKinds: {
      'hold the bridge pin': 'bridge pin held',
      'press the wire at the bridge': 'wire pressed at the bridge',
      'tap the wire to the bridge': 'wire tapped to the bridge',
      'seat the wire at the other end': 'wire seated at the other end',
      'take out its twist': 'twist taken out',
      other: 'other',
    },
    takes: 'Takes',
    beforeAfter: (before: number, after: number) => `${before} before, ${after} after`,
    decisions: 'Decisions',
    decidedOn: 'Decided on',
    decision: 'Decision',
    doneOn: 'Done on',
    notYet: 'not yet',
  },
  hearing: {
    title: (note: string, instrument: string) => `${note} of ${instrument}`,
    subtitle: 'The same note at two visits, equally loud.',
    sound: (date: string, stage: string) => `${date}, ${stage}`,
    stages: { 'as-found': 'as found', 'as-left': 'as left' },
    playBoth: 'Play one after the other',
    seconds: 'seconds',
    decibels: 'dB',
    beat: (rate: string, depth: string) => `${rate}, ${depth} deep`,
    noBeat: (partial: number) => `no beat found on partial ${partial}`,
    partial: (partial: number) =>
      `The line is the loudness of partial ${partial} from moment to moment, in decibels below its loudest: where it beats, the line goes up and down. Below it is the outline of the whole sound.`,
    loudness:
      'Both sounds were brought to equal energy in the first second after the strike, without weighting by frequency, and given soft ends; nothing else was changed.',
    summary: (one: string, other: string, partial: number) =>
      `Loudness of partial ${partial} over time, for ${one} and for ${other}, one above the other.`,
  },
  method: {
    title: 'How this was measured',
    readingCount: (count: number) => `${count} ${count === 1 ? 'reading' : 'readings'}`,
    visitCount: (count: number) => `${count} ${count === 1 ? 'visit' : 'visits'}`,
    fromTo: (visits: string, from: string, to: string) =>
      from === to ? `${visits} (${from})` : `${visits} from ${from} to ${to}`,
    readings: (readings: string, visits: string, uncertainty: string) =>
      `${readings} at ${visits}: each note was recorded and the frequencies of its partials were measured. Half of the readings are more certain than ± ${uncertainty} (one standard uncertainty).`,
    readingsOnly: (readings: string, visits: string) =>
      `${readings} at ${visits}: each note was recorded and the frequencies of its partials were measured.`,
    drift:
      'Drift is the change from one visit’s “as left” to the next visit’s “as found”. What a whole bridge does together (season, temperature, settling wire) is taken out; a slip is what a string does beyond that, downwards, again and again.',
    certainty: (threshold: string) =>
      `A slip of ${threshold} a year counts as one that matters. “95 %” means: if twenty pianos get this statement, one may turn out otherwise.`,
    falseBeats:
      'A false beat is counted where a string that sounded alone, or behind a felt strip, beat on some partials only; unison beats are not counted.',
    leftOut: (count: number) =>
      `${count} ${count === 1 ? 'take was' : 'takes were'} left out: too noisy or clipped, or nobody noted which string sounded.`,
    made: 'This page was written by Stillpin from the instrument’s records. Its figures cannot be typed in.',
  },
};

export type ReportWords = typeof englishReportWords;
