/**
 * The three invented instruments: what they are, when they were visited, and what their strings really do. The analysis never
 * sees this; it only sees the readings made from it.
 */
import { COMPASS_85, COMPASS_88 } from '../../piano/compass.ts';
import type { Instrument, InstrumentEvent } from '../../piano/instrument.ts';
import type { BenchMorning } from './benchMorning.ts';
import type { InventedScale } from './inventedScale.ts';

export type FailingZone = {
  readonly fromMidi: number;
  readonly toMidi: number;
  /** How fast its strings go flat by themselves at the first and at the last visit; the rate grows evenly in between. */
  readonly firstCentsPerYear: number;
  readonly lastCentsPerYear: number;
};

export type Settling = {
  /** How far the new wire would fall in all if nobody tuned it. */
  readonly totalCents: number;
  readonly timeConstantYears: number;
};

/** Torques of all centre strings' pins, read at one visit. */
export type TorqueRound = {
  /** Counted from the end where negative. */
  readonly visitIndex: number;
  readonly usualNm: number;
  /** Share that is lost in the middle of the failing zone. */
  readonly zoneLoss: number;
};

export type InstrumentPlan = {
  readonly instrument: Omit<Instrument, 'id' | 'isDemonstration'>;
  readonly events: readonly Omit<InstrumentEvent, 'id' | 'instrumentId'>[];
  readonly firstVisitOn: string;
  /** Visits, in years since the first one; the days are shifted a little so that they look like appointments. */
  readonly visitYears: readonly number[];
  readonly meanHumidityPct: number;
  readonly humiditySwingPct: number;
  /** This instrument's response to humidity as a share of the common one. */
  readonly humidityShare: number;
  /** The whole instrument, by itself. */
  readonly fallCentsPerYear: number;
  readonly zone: FailingZone | null;
  /** Counted from the first visit. */
  readonly settling: Settling | null;
  /** What its strings are made of, where lengths and wires were measured; null: an average piano's inharmonicity, and no schedule. */
  readonly scale: InventedScale | null;
  /** Share of the strings from C5 up that beat by themselves. */
  readonly falseBeatShare: number;
  readonly torqueRounds: readonly TorqueRound[];
  /** Strings recorded one by one, with trials at the bridge; absent where nobody did. */
  readonly bench?: BenchMorning;
  readonly remarks: readonly [string, ...string[]];
};

const INVENTED =
  'Invented for looking around: this piano, its people, its visits and every figure were made up by a program.';

const MUSIC_ROOM_GRAND: InstrumentPlan = {
  instrument: {
    name: 'The music room grand',
    kind: 'grand',
    builtYear: 1908,
    serialNumber: '',
    compass: COMPASS_88,
    bassBridgeTopMidi: 43,
    strutsAfterMidi: [43, 67, 84],
    pinBlock: 'New in 2014, quartersawn beech, seven laminations',
    pinBlockKind: 'laminated',
    tuningPinDiameterMm: 7.16,
    remark: `${INVENTED} It holds: ten years of seasons, and nothing else.`,
  },
  events: [
    {
      happenedOn: '2014-04-22',
      kind: 'block-work',
      fromMidi: null,
      toMidi: null,
      remark: 'New pin block fitted to the plate flange.',
    },
    {
      happenedOn: '2014-06-10',
      kind: 'restrung',
      fromMidi: null,
      toMidi: null,
      remark: 'New wire and pins throughout.',
    },
  ],
  firstVisitOn: '2016-08-18',
  visitYears: Array.from({ length: 10 }, (_, year) =>
    year % 2 === 0 ? [year, year + 0.5] : [year, year + 0.25, year + 0.5],
  ).flat(),
  meanHumidityPct: 46,
  humiditySwingPct: 12,
  humidityShare: 0.65,
  fallCentsPerYear: 0.3,
  zone: null,
  settling: null,
  scale: null,
  falseBeatShare: 0.1,
  torqueRounds: [
    { visitIndex: 0, usualNm: 12.4, zoneLoss: 0 },
    { visitIndex: -1, usualNm: 11.6, zoneLoss: 0 },
  ],
  remarks: ['', 'Open window in the room.', 'Heating on for a week.', 'Played every day since the last visit.', ''],
};

const SCHOOL_HALL_UPRIGHT: InstrumentPlan = {
  instrument: {
    name: 'The school hall upright',
    kind: 'upright',
    builtYear: 1896,
    serialNumber: '',
    compass: COMPASS_85,
    bassBridgeTopMidi: 50,
    strutsAfterMidi: [50, 71],
    pinBlock: 'Original, three laminations, repaired at the left end in 1987',
    pinBlockKind: 'repaired in place',
    tuningPinDiameterMm: 7.27,
    remark: `${INVENTED} Twelve notes above the strut after B4 lose their pitch, faster each year.`,
  },
  events: [
    {
      happenedOn: '2018-09-03',
      kind: 'restrung',
      fromMidi: null,
      toMidi: null,
      remark: 'New wire, pins one size larger in the old block.',
    },
  ],
  firstVisitOn: '2020-10-05',
  visitYears: [0, 0.45, 1, 1.5, 2.05, 2.5, 3, 3.4, 3.75, 4.2, 4.6, 5, 5.4, 5.8],
  meanHumidityPct: 48,
  humiditySwingPct: 8,
  humidityShare: 0.9,
  fallCentsPerYear: 0.8,
  zone: { fromMidi: 72, toMidi: 83, firstCentsPerYear: 1, lastCentsPerYear: 7 },
  settling: null,
  scale: {
    wireGrade: 'EN 10270-1 SM',
    plain: { lengthAtA7Mm: 60, octavesOfLength: 0.93, thinnestMm: 0.775, notesPerSize: 5 },
    wound: { lengthMm: [1150, 1000], coreMm: [1.35, 0.915], pullN: [900, 780] },
  },
  falseBeatShare: 0.22,
  torqueRounds: [
    { visitIndex: 0, usualNm: 8.4, zoneLoss: 0.3 },
    { visitIndex: -1, usualNm: 7.8, zoneLoss: 0.58 },
  ],
  remarks: [
    '',
    'Moved to the other side of the hall.',
    'Two keys sluggish, eased.',
    '',
    'Hall in use, surveyed after the rehearsal.',
  ],
};

/** Left and right strings of eight notes in the fifth octave; what the trials say differs from string to string. */
const GARDEN_HOUSE_BENCH: BenchMorning = {
  visitIndex: -3,
  againIndex: -1,
  strings: [
    {
      midi: 72,
      stringPosition: 1,
      offsetCents: 0.9,
      beat: { rateHz: 1.42, depthDb: 10, partialNumbers: [1, 2] },
      trials: [{ kind: 'hold the bridge pin', depthShare: 0 }],
      decision: {
        choice: 'bridge work',
        reason: 'Pin loose in its hole: plug and set again.',
        isDone: true,
        depthShare: 0,
      },
    },
    { midi: 72, stringPosition: 3, offsetCents: -0.2, beat: null, trials: [], decision: null },
    { midi: 74, stringPosition: 1, offsetCents: 0.1, beat: null, trials: [], decision: null },
    {
      midi: 74,
      stringPosition: 3,
      offsetCents: -1.3,
      beat: { rateHz: 2.1, depthDb: 9, partialNumbers: [1, 2, 3] },
      trials: [
        { kind: 'hold the bridge pin', depthShare: 1 },
        { kind: 'tap the wire to the bridge', depthShare: 0.35 },
      ],
      decision: {
        choice: 'bridge work',
        reason: 'Cap worn under the wire: notch anew.',
        isDone: true,
        depthShare: 0.85,
      },
    },
    {
      midi: 76,
      stringPosition: 1,
      offsetCents: 0.3,
      stiffnessShare: 1.1,
      beat: { rateHz: 1.15, depthDb: 11, partialNumbers: [1] },
      trials: [
        { kind: 'hold the bridge pin', depthShare: 1 },
        { kind: 'tap the wire to the bridge', depthShare: 1 },
        { kind: 'take out its twist', depthShare: 0.98 },
      ],
      decision: {
        choice: 'replace wire',
        reason: 'Nothing helps, and a kink to be felt.',
        isDone: false,
        depthShare: 1,
      },
    },
    { midi: 76, stringPosition: 3, offsetCents: 0.2, beat: null, trials: [], decision: null },
    {
      midi: 77,
      stringPosition: 1,
      offsetCents: -0.4,
      beat: { rateHz: 0.7, depthDb: 3, partialNumbers: [3] },
      trials: [],
      decision: { choice: 'leave', reason: 'Hardly to be heard.', isDone: false, depthShare: 1 },
    },
    { midi: 77, stringPosition: 3, offsetCents: 0.1, beat: null, trials: [], decision: null },
    { midi: 79, stringPosition: 1, offsetCents: 0.2, beat: null, trials: [], decision: null },
    {
      midi: 79,
      stringPosition: 3,
      offsetCents: 0.6,
      stiffnessShare: 0.99,
      beat: { rateHz: 1.9, depthDb: 8, partialNumbers: [1, 2] },
      trials: [],
      decision: null,
    },
  ],
};

const GARDEN_HOUSE_GRAND: InstrumentPlan = {
  instrument: {
    name: 'The garden house grand',
    kind: 'grand',
    builtYear: 1924,
    serialNumber: '',
    compass: COMPASS_88,
    bassBridgeTopMidi: 46,
    strutsAfterMidi: [46, 69],
    pinBlock: 'Original, pins one size larger',
    pinBlockKind: 'original',
    tuningPinDiameterMm: 7.27,
    remark: `${INVENTED} Newly restrung: the wire settles for two years, all of it, less each time.`,
  },
  events: [
    {
      happenedOn: '2024-02-26',
      kind: 'restrung',
      fromMidi: null,
      toMidi: null,
      remark: 'New wire and pins throughout.',
    },
  ],
  firstVisitOn: '2024-03-04',
  visitYears: [0, 0.08, 0.2, 0.38, 0.62, 0.9, 1.2, 1.55, 2, 2.45],
  meanHumidityPct: 47,
  humiditySwingPct: 7,
  humidityShare: 0.8,
  fallCentsPerYear: 0.5,
  zone: null,
  settling: { totalCents: 34, timeConstantYears: 0.5 },
  scale: {
    wireGrade: 'ASTM A228',
    plain: { lengthAtA7Mm: 58, octavesOfLength: 0.94, thinnestMm: 0.775, notesPerSize: 6 },
    wound: { lengthMm: [1480, 1180], coreMm: [1.45, 1], pullN: [880, 780] },
  },
  falseBeatShare: 0.1,
  torqueRounds: [{ visitIndex: 0, usualNm: 9.6, zoneLoss: 0 }],
  bench: GARDEN_HOUSE_BENCH,
  remarks: ['', 'Coils and beckets pressed home again.', 'Strings seated at the bridge pins before tuning.', ''],
};

export const INSTRUMENT_PLANS: readonly InstrumentPlan[] = [MUSIC_ROOM_GRAND, SCHOOL_HALL_UPRIGHT, GARDEN_HOUSE_GRAND];
