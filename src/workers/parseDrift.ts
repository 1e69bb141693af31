/** The gate for messages to and from the drift worker. What comes back is looked at in outline: the same program made it. */
import * as v from 'valibot';
import type { Drift } from '../stability/drift/analyseDrift.ts';
import type { WhatIfTrial } from '../stability/whatIf.ts';
import type { SurveyCurves } from '../survey/surveyCurves.ts';
import { checkedMessage } from './checkedMessage.ts';
import type { DriftReport, DriftWork } from './driftMessages.ts';

const finite = v.pipe(v.number(), v.finite());
const aboveZero = v.pipe(finite, v.gtValue(0));
const midi = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(127));
const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const date = v.pipe(v.string(), v.isoDate());

const reading = v.object({
  visitedOn: date,
  stage: v.picklist(['as-found', 'as-left']),
  humidityPct: v.nullable(finite),
  temperatureC: v.nullable(finite),
  midi,
  stringPosition: v.picklist([0, 1, 2, 3]),
  cents: finite,
  standardUncertaintyCents: v.nullable(aboveZero),
});

const event = v.object({
  happenedOn: date,
  kind: v.picklist(['restrung', 'string-replaced', 'pin-replaced', 'block-work', 'moved', 'tuned']),
  fromMidi: v.nullable(midi),
  toMidi: v.nullable(midi),
});

const history = v.object({
  readings: v.array(reading),
  events: v.array(event),
  instrument: v.object({
    compass: v.nullable(v.object({ lowestMidi: midi, highestMidi: midi })),
    bassBridgeTopMidi: v.nullable(midi),
    strutsAfterMidi: v.array(midi),
  }),
  thresholdCentsPerYear: aboveZero,
});

const question = v.object({
  fault: v.variant('kind', [
    v.object({ kind: v.literal('none') }),
    v.object({
      kind: v.literal('pins'),
      pinCount: v.pipe(count, v.minValue(1), v.maxValue(40)),
      centsPerYear: aboveZero,
    }),
    v.object({
      kind: v.literal('zone'),
      noteCount: v.pipe(count, v.minValue(2), v.maxValue(30)),
      centsPerYear: aboveZero,
    }),
  ]),
  visitsPerYear: v.picklist([1, 2, 3, 4]),
  noiseFactor: aboveZero,
  isHumidityNoted: v.boolean(),
  thresholdCentsPerYear: aboveZero,
});

const positiveOrNull = v.nullable(v.pipe(finite, v.minValue(0)));

const survey = v.object({
  readings: v.array(
    v.object({
      midi,
      stringPosition: v.picklist([0, 1, 2, 3]),
      inharmonicityB: v.nullable(finite),
      inharmonicityBStandardUncertainty: positiveOrNull,
      lifeTimeS: positiveOrNull,
      quality: v.object({ isUsable: v.boolean() }),
    }),
  ),
  compass: v.object({ lowestMidi: midi, highestMidi: midi }),
  bassBridgeTopMidi: v.nullable(midi),
});

const work = v.variant('kind', [
  v.object({ kind: v.literal('judge'), history }),
  v.object({ kind: v.literal('what-if'), question, seeds: v.array(v.pipe(v.number(), v.integer())) }),
  v.object({ kind: v.literal('curves'), survey }),
]);

const drift = v.custom<Drift>((value) => hasParts(value, 'verdict', 'pins', 'intervals', 'detail'), 'not a judgement');
const trial = v.custom<WhatIfTrial>((value) => hasParts(value, 'seed', 'checks'), 'not a trial');

const curves = v.custom<SurveyCurves>((value) => hasParts(value, 'inharmonicity', 'life'), 'not a survey’s curves');

const report = v.variant('kind', [
  v.object({ kind: v.literal('judged'), drift }),
  v.object({ kind: v.literal('trial'), trial }),
  v.object({ kind: v.literal('curves'), curves }),
  v.object({ kind: v.literal('finished') }),
  v.object({ kind: v.literal('failed'), detail: v.string() }),
]);

function hasParts(value: unknown, ...names: readonly string[]): boolean {
  return typeof value === 'object' && value !== null && names.every((name) => name in value);
}

/** @throws {TypeError} naming the part of the message that does not fit */
export const parseDriftWork = (data: unknown): DriftWork => checkedMessage(work, data);
/** @throws {TypeError} naming the part of the message that does not fit */
export const parseDriftReport = (data: unknown): DriftReport => checkedMessage(report, data);
