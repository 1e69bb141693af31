/** An archive on the disk with a few small instruments. */
import { writeFileSync } from 'node:fs';
import { writeArchive } from '../../../src/files/archive/writeArchive.ts';
import type { Instrument, Survey, Take, Visit } from '../../../src/piano/instrument.ts';
import { exampleInstrument, exampleSurvey, exampleTake, exampleVisit } from '../../records/exampleRecords.ts';

export type ArchiveFile = {
  readonly path: string;
  readonly instruments: readonly { readonly id: string; readonly takeCount: number }[];
  readonly takeCount: number;
};

const NOTES = Array.from({ length: 88 }, (_, index) => 21 + index);

export async function archiveOfInstruments(path: string, count: number): Promise<ArchiveFile> {
  const instruments: Instrument[] = [];
  const visits: Visit[] = [];
  const surveys: Survey[] = [];
  const takes: Take[] = [];
  for (let index = 0; index < count; index += 1) {
    const instrument = exampleInstrument({ name: `Upright ${index + 1}` });
    instruments.push(instrument);
    for (const visitedOn of ['2021-05-04', '2022-05-04']) {
      const visit = exampleVisit(instrument, { visitedOn });
      const survey = exampleSurvey(visit);
      visits.push(visit);
      surveys.push(survey);
      takes.push(...NOTES.map((midi) => exampleTake(survey, { midi })));
    }
  }
  const pieces: Uint8Array[] = [];
  const options = { createdAt: '2026-01-02T03:04:05Z', programVersion: '0.1.0' };
  await writeArchive({ instruments, visits, surveys, takes: () => takes }, options, (bytes) => {
    pieces.push(bytes.slice());
  });
  writeFileSync(path, Buffer.concat(pieces));
  const takeCount = 2 * NOTES.length;
  return { path, instruments: instruments.map(({ id }) => ({ id, takeCount })), takeCount: takes.length };
}
