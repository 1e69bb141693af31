/** A workshop of many instruments for the archive's speed: readings with all digits, made once and used again under new ids. */
import type { ArchiveContents } from '../../src/files/archive/archiveContents.ts';
import { COMPASS_88, notesOf } from '../../src/piano/compass.ts';
import type { Instrument, Survey, Take, Visit } from '../../src/piano/instrument.ts';
import type { NoteReading, PartialReading } from '../../src/piano/reading.ts';
import { type SeededRandom, seededRandom } from '../support/seededRandom.ts';

export type Workshop = {
  readonly contents: ArchiveContents;
  readonly takeCount: number;
  readonly partialCount: number;
};

/** Surveys whose readings differ; further ones use them again. */
const OWN_SURVEYS = 12;

export function benchWorkshop(instrumentCount: number, visitCount: number): Workshop {
  const random = seededRandom(20_260_325);
  const surveys = Array.from({ length: OWN_SURVEYS }, () =>
    notesOf(COMPASS_88).map((midi) => benchReading(midi, random)),
  );
  const instruments = Array.from({ length: instrumentCount }, (_, index) => benchInstrument(index));
  const visits = instruments.flatMap(({ id }, at) =>
    Array.from({ length: visitCount }, (_, index) => benchVisit(id, at, index)),
  );
  const readingsOf = (index: number) => surveys[index % OWN_SURVEYS] ?? [];
  function* takes(): Generator<Take> {
    for (const [index, visit] of visits.entries())
      for (const reading of readingsOf(index)) yield benchTake(visit, index, reading);
  }
  const partialsOfSurvey = surveys.map((readings) => readings.reduce((sum, { partials }) => sum + partials.length, 0));
  return {
    contents: { instruments, visits, surveys: visits.map(benchSurvey), takes },
    takeCount: visits.length * 88,
    partialCount: visits.reduce((sum, _, index) => sum + (partialsOfSurvey[index % OWN_SURVEYS] ?? 0), 0),
  };
}

function idOf<Id>(kind: number, one: number, other = 0): Id {
  const hex = (value: number, length: number) => value.toString(16).padStart(length, '0');
  const mixed = Math.imul(one * 8191 + other * 131 + kind, 0x9e3779b1) >>> 0;
  return `${hex(mixed, 8)}-${hex(kind, 4)}-4${hex(other, 3)}-8${hex(one % 4096, 3)}-${hex(one, 12)}` as Id;
}

function benchInstrument(index: number): Instrument {
  return {
    id: idOf(1, index),
    name: `Instrument ${index + 1}`,
    kind: 'grand',
    builtYear: 1900,
    serialNumber: String(10_000 + index),
    compass: COMPASS_88,
    bassBridgeTopMidi: 48,
    strutsAfterMidi: [48, 68],
    pinBlock: 'beech',
    remark: '',
    isDemonstration: false,
  };
}

function benchVisit(instrumentId: Instrument['id'], at: number, index: number): Visit {
  return {
    id: idOf(2, at, index),
    instrumentId,
    visitedOn: `20${String(index + 10).padStart(2, '0')}-05-04`,
    visitedBy: 'Ida',
    humidityPct: 45,
    temperatureC: 20,
    pitchStandardHz: 440,
    remark: '',
  };
}

function benchSurvey(visit: Visit): Survey {
  return {
    id: visit.id as string as Survey['id'],
    visitId: visit.id,
    instrumentId: visit.instrumentId,
    stage: 'as-found',
    startedAt: `${visit.visitedOn}T09:00:00.000Z`,
    finishedAt: `${visit.visitedOn}T09:06:00.000Z`,
    deviceLabel: 'Microphone',
    sampleRateHz: 48000,
    strings: 'centre strings',
  };
}

function benchTake(visit: Visit, index: number, reading: NoteReading): Take {
  return {
    id: idOf(3, index, reading.midi),
    surveyId: visit.id as string as Survey['id'],
    visitId: visit.id,
    instrumentId: visit.instrumentId,
    midi: reading.midi,
    stringPosition: 2,
    recordedAt: `${visit.visitedOn}T09:01:00.000Z`,
    isKept: true,
    reading,
    measured: { programVersion: '0.1.0', measuredAt: `${visit.visitedOn}T09:01:02.000Z` },
  };
}

/** As many partials as a good microphone shows: some thirty in the bass, two at the top. */
function benchReading(midi: number, random: SeededRandom): NoteReading {
  const f0Hz = 440 * 2 ** ((midi - 69) / 12) * (1 + 1e-3 * random.normal());
  const count = Math.max(2, Math.round(32 - (midi - 21) / 2.8));
  const partials = Array.from({ length: count }, (_, index) => benchPartial(index + 1, f0Hz, random));
  return {
    midi,
    stringPosition: 2,
    onsetS: random.uniform() * 300,
    durationS: 2 + random.uniform(),
    pitchStandardHz: 440,
    partial1Hz: f0Hz,
    partial1StandardUncertaintyHz: 0.003 * random.uniform(),
    partial1Source: 'measured',
    f0Hz,
    f0StandardUncertaintyHz: 0.004 * random.uniform(),
    inharmonicityB: 4e-4 * random.uniform(),
    inharmonicityBStandardUncertainty: 1e-6 * random.uniform(),
    offsetCents: random.normal(),
    offsetStandardUncertaintyCents: 0.1 * random.uniform(),
    partials,
    beating: {
      kind: 'false beat',
      rateHz: random.uniform(),
      depthDb: 9 * random.uniform(),
      partialNumbers: [2, 3],
      reason: 'Two partials beat.',
    },
    unisonStringsCents: null,
    lifeTimeS: 9 * random.uniform(),
    quality: { snrDb: 40 * random.uniform(), isClipped: false, isUsable: true, faults: [] },
  };
}

function benchPartial(partialNumber: number, f0Hz: number, random: SeededRandom): PartialReading {
  const frequencyHz = partialNumber * f0Hz * (1 + 1e-4 * random.uniform());
  const component = () => ({
    frequencyHz: frequencyHz + random.normal(),
    frequencyStandardUncertaintyHz: 0.003 * random.uniform(),
    levelDbfs: -20 - 40 * random.uniform(),
    decayTimeS: 9 * random.uniform(),
  });
  const beats =
    partialNumber % 5 === 0
      ? [
          {
            rateHz: random.uniform(),
            rateStandardUncertaintyHz: 0.01 * random.uniform(),
            depthDb: 9 * random.uniform(),
          },
        ]
      : [];
  return {
    partialNumber,
    frequencyHz,
    frequencyStandardUncertaintyHz: 0.003 * random.uniform(),
    levelDbfs: -20 - 40 * random.uniform(),
    snrDb: 60 * random.uniform(),
    promptDecayTimeS: 9 * random.uniform(),
    afterDecayTimeS: partialNumber % 2 === 0 ? 20 * random.uniform() : null,
    beats,
    components: beats.length > 0 ? [component(), component()] : [component()],
  };
}
