import { version } from '../../package.json';
import type { Measured } from '../piano/instrument.ts';

/** By this program, now. */
export function measuredNow(): Measured {
  return { programVersion: version, measuredAt: new Date().toISOString() };
}

export const PROGRAM_VERSION: string = version;
