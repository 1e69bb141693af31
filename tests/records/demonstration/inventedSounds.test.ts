import { expect, it } from 'vitest';
import { measureTake } from '../../../src/analysis/tone/measureTake.ts';
import { decodeTakeSound } from '../../../src/files/audio/takeSound.ts';
import { demonstrationRecords } from '../../../src/records/demonstration/demonstrationRecords.ts';
import { inventedSounds } from '../../../src/records/demonstration/inventedSounds.ts';

it('makes sounds that are what their readings say, of the same two strings at the first and the last visit', async () => {
  const [, hall] = demonstrationRecords(1908);
  if (!hall) throw new Error('the demonstration has fewer instruments than it had');
  const sounds = [...inventedSounds(hall)];
  const takes = sounds.map(({ id }) => hall.takes.find((take) => take.id === id)!);
  expect(takes.map(({ midi }) => midi)).toEqual([69, 72, 69, 72]);
  const visits = [hall.visits[0], hall.visits[0], hall.visits.at(-1), hall.visits.at(-1)];
  expect(takes.map(({ visitId }) => visitId)).toEqual(visits.map((visit) => visit?.id));
  const { samples, sampleRateHz } = await decodeTakeSound(sounds[0]!.bytes);
  const { midi, stringPosition, reading } = takes[0]!;
  const outcome = measureTake(samples, sampleRateHz, { pitchStandardHz: 440, midi, stringPosition });
  // A single string in a quiet room: its pitch comes back to well below what anybody hears.
  expect(outcome.found && Math.abs(outcome.reading.offsetCents - reading.offsetCents)).toBeLessThan(0.2);
});
