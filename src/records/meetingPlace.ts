/** Where devices meet, as far as the records need to know. */
import type { StopSignal } from '../files/archive/archiveFault.ts';
import type { ByteSource } from '../files/audio/byteSource.ts';

/** A folder that other devices see as well. */
export type MeetingPlace = {
  readonly names: () => Promise<string[]>;
  readonly open: (name: string) => Promise<ByteSource>;
  /** A new file; it appears under its name only once it is whole. */
  readonly create: (name: string) => Promise<{
    readonly write: (bytes: Uint8Array) => Promise<void>;
    readonly finish: () => Promise<void>;
    readonly discard: () => Promise<void>;
  }>;
};

export type MeetingOptions = {
  /** ISO 8601 date and time. */
  readonly now: string;
  readonly programVersion: string;
  readonly signal?: StopSignal;
};
