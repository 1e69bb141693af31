/** A small workshop with a row in every table, and the way of it through an archive and back. */

import type { ArchiveContents, ArchiveRowKind, ArchiveRows } from '../../../src/files/archive/archiveContents.ts';
import { openArchive, type ReadOptions } from '../../../src/files/archive/readArchive.ts';
import { type WriteOptions, writeArchive } from '../../../src/files/archive/writeArchive.ts';
import { bytesAsSource } from '../../../src/files/audio/byteSource.ts';
import type { Photograph } from '../../../src/piano/photograph.ts';
import {
  exampleCalibration,
  exampleEvent,
  exampleInstrument,
  examplePartial,
  exampleReading,
  exampleSound,
  exampleSurvey,
  exampleTake,
  exampleVisit,
} from '../../records/exampleRecords.ts';

export type RowLists = { [Kind in ArchiveRowKind]: ArchiveRows[Kind][] };

export const WRITTEN_AT: WriteOptions = { createdAt: '2026-03-01T10:00:00.000Z', programVersion: '0.1.0' };

export function exampleRows(): RowLists {
  const instrument = exampleInstrument({ ownerName: 'Ada, the owner', ownerAddress: '=1 "Long" Lane\nTown' });
  const other = { ...exampleInstrument({ name: '', builtYear: null, bassBridgeTopMidi: null, strutsAfterMidi: [] }) };
  const visit = exampleVisit(instrument, { remark: "+1 cent\ttoo 'sharp'" });
  const later = exampleVisit(instrument, {
    visitedOn: '2023-01-02',
    visitedBy: '',
    humidityPct: null,
    temperatureC: -0.5,
  });
  const survey = exampleSurvey(visit, {
    scope: { kind: 'section', fromMidi: 60, toMidi: 64 },
    clockAgainstSystem: { offsetPpm: 12.5, offsetStandardUncertaintyPpm: 0.1 },
    calibration: exampleCalibration,
  });
  const unfinished = exampleSurvey(later, { stage: 'as-left', sampleRateHz: null });
  const measured = { programVersion: '0.1.0', measuredAt: '2021-05-04T09:01:00.000Z' };
  const beating = {
    ...examplePartial(2, 882.1),
    beats: [{ rateHz: 0.62, rateStandardUncertaintyHz: 0.01, depthDb: 7.5 }],
  };
  const take = exampleTake(survey, {
    measured,
    reading: exampleReading({ partials: [examplePartial(1, 440.5), beating], unisonStringsCents: [0.1, -1e-9] }),
    earlierReadings: [
      { reading: exampleReading({ midi: 68, partials: [] }), measured: null },
      {
        reading: exampleReading({
          quality: { snrDb: Infinity, isClipped: true, isUsable: false, faults: ['clipped'] },
        }),
        measured,
      },
    ],
  });
  const second = exampleTake(survey, { isKept: false, midi: 70 });
  const onInstrument = { instrumentId: instrument.id, midi: 60, stringPosition: 1 } as const;
  const photograph: Photograph = {
    id: newId(),
    instrumentId: instrument.id,
    visitId: null,
    midi: null,
    stringPosition: null,
    takenAt: null,
    addedAt: '2021-05-04T09:00:00+02:00',
    caption: '@ the bridge',
    widthPx: 640,
    heightPx: 480,
    mediaType: 'image/jpeg',
  };
  return {
    instruments: [instrument, other],
    events: [exampleEvent(instrument, { fromMidi: 60, toMidi: 61 })],
    visits: [visit, later],
    surveys: [survey, unfinished],
    calibrations: [exampleCalibration],
    takes: [take, second],
    sounds: [exampleSound(take), exampleSound(second)],
    torques: [{ ...onInstrument, id: newId(), visitId: visit.id, torqueNm: 9.25, direction: 'not noted', remark: '' }],
    decisions: [
      { ...onInstrument, id: newId(), choice: 'bridge work', reason: '-', decidedOn: '2021-05-04', doneOn: null },
      {
        ...onInstrument,
        id: newId(),
        choice: 'leave',
        reason: "'quoted'",
        decidedOn: '2021-05-04',
        doneOn: '2021-06-01',
      },
    ],
    trials: [
      {
        ...onInstrument,
        id: newId(),
        visitId: visit.id,
        surveyId: survey.id,
        kind: 'take out its twist',
        triedAt: '2021-05-04T09:30',
        takesBefore: [take.id],
        takesAfter: [second.id],
        remark: '',
      },
    ],
    schedules: [
      {
        id: newId(),
        instrumentId: instrument.id,
        name: 'As measured',
        kind: 'as it is',
        pitchStandardHz: 435,
        remark: '',
        rows: [scheduleRow(21), scheduleRow(22)],
      },
      { id: newId(), instrumentId: other.id, name: '', kind: 'planned', pitchStandardHz: 440, remark: '', rows: [] },
    ],
    wireGrades: [
      {
        id: newId(),
        name: 'Soft wire',
        source: 'A test piece of our own',
        youngsModulusGpa: 195,
        densityKgPerM3: 7800,
        rows: [{ diameterMm: 0.8, tensileStrengthMpa: 1900 }],
      },
    ],
    photographs: [photograph, { ...photograph, id: newId(), midi: 60, stringPosition: 0, visitId: visit.id }],
    photographFiles: [
      { id: photograph.id, instrumentId: instrument.id, bytes: Uint8Array.of(0xff, 0xd8, 0xff, 0xe0, 1) },
    ],
    rivals: [
      {
        id: newId(),
        instrumentId: instrument.id,
        table: 'instruments',
        rowId: instrument.id,
        foundAt: '2024-01-01T00:00:00Z',
        row: { ...instrument, remark: 'another', table: new Float64Array([1.5, Number.NaN, -0]) },
      },
    ],
    gone: [
      {
        id: 'visits/x',
        instrumentId: null,
        table: 'visits',
        rowId: 'x',
        stamp: { a: 3 },
        deletedAt: '2024-01-01T00:00:00Z',
      },
    ],
    unattached: [],
  };
}

export function newId<Id extends string>(): Id {
  return crypto.randomUUID() as Id;
}

function scheduleRow(midi: number) {
  return {
    midi,
    stringCount: 1,
    speakingLengthMm: 1200.25,
    wireDiameterMm: null,
    coreDiameterMm: 1.1,
    wrap: 'copper',
    wireGrade: '',
    bridge: 'bass',
    interpolated: ['speakingLengthMm'],
  } as const;
}

export function contentsOf(rows: RowLists): ArchiveContents {
  return { ...rows, takes: () => rows.takes };
}

export async function archiveOf(rows: RowLists, options: Partial<WriteOptions> = {}): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  await writeArchive(contentsOf(rows), { ...WRITTEN_AT, ...options }, (bytes) => void pieces.push(bytes.slice()));
  return new Uint8Array(await new Blob(pieces).arrayBuffer());
}

/** @throws {ArchiveFault} */
export async function rowsOf(bytes: Uint8Array, options: ReadOptions = {}): Promise<RowLists> {
  const outcome = await openArchive(bytesAsSource(bytes));
  if (!outcome.opened) throw outcome.fault;
  const rows = emptyRows();
  for await (const batch of outcome.archive.batches(options)) (rows[batch.kind] as unknown[]).push(...batch.rows);
  return rows;
}

export function emptyRows(): RowLists {
  return {
    instruments: [],
    events: [],
    visits: [],
    surveys: [],
    calibrations: [],
    takes: [],
    sounds: [],
    torques: [],
    decisions: [],
    trials: [],
    schedules: [],
    wireGrades: [],
    photographs: [],
    photographFiles: [],
    rivals: [],
    gone: [],
    unattached: [],
  };
}
