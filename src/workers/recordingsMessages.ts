/** Every message between the page and the worker that reads recordings. */
import type { ListeningSettings, TakeMessage } from './listeningMessages.ts';

/** Page to worker: once, at the beginning. */
export type RecordingsRequest = {
  readonly kind: 'read';
  readonly files: readonly File[];
  readonly settings: ListeningSettings;
  /** Each to a take worker. */
  readonly takeWorkers: readonly MessagePort[];
};

export type UnreadableRecording = {
  readonly kind: 'unreadable';
  readonly fileName: string;
  /** One sentence: what is wrong and what to do. It does not name the file. */
  readonly message: string;
};

export type RecordingRead = {
  readonly kind: 'read';
  readonly fileName: string;
  readonly sampleRateHz: number;
  /** Takes in which a note was found. */
  readonly noteCount: number;
  /** What is worth knowing about the file, one sentence each. */
  readonly warnings: readonly string[];
};

/** Worker to page. */
export type RecordingsReport =
  | { readonly kind: 'take'; readonly fileName: string; readonly take: TakeMessage }
  | { readonly kind: 'progress'; readonly share: number }
  | UnreadableRecording
  | RecordingRead
  | { readonly kind: 'finished' }
  /** A fault of the program. */
  | { readonly kind: 'failed'; readonly detail: string };
