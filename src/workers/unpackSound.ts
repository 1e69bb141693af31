/** A stored sound as samples, unpacked where it keeps nobody waiting. */
import type { TakeSound } from '../piano/instrument.ts';
import { sharedTakeWorker } from './sharedTakeWorker.ts';

export function unpackSound(bytes: TakeSound['bytes']) {
  return sharedTakeWorker().ask({ kind: 'decode', bytes });
}
