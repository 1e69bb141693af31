/** What became of a write: it happened, whole and durable, or it did not, and nothing changed. */

export type WriteFailureReason =
  /** The browser refused for want of room. */
  | 'storage-full'
  /** The database is closed: another tab brought a newer version, or the browser took the storage away. */
  | 'closed'
  /** What was to be written is not a record; the message names the field. */
  | 'not-a-record'
  | 'failed';

export type WriteFailure = { readonly written: false; readonly reason: WriteFailureReason; readonly message: string };
export type WriteOutcome = { readonly written: true } | WriteFailure;

/** Thrown inside this folder only; `outcomeOf` turns it into a value. */
export class NotARecordError extends Error {
  override readonly name = 'NotARecordError';
}

/** Runs a write and says what became of it; a failure is a value, never a rejection. */
export async function outcomeOf<Written extends { readonly written: true }>(
  write: () => PromiseLike<Written>,
): Promise<Written | WriteFailure> {
  try {
    return await write();
  } catch (error) {
    return failureOf(error);
  }
}

const CLOSED_NAMES = [
  'DatabaseClosedError',
  'InvalidStateError',
  'VersionChangeError',
  'MissingAPIError',
  'RecordsUnavailableError',
];

/** What the browser says of these is a bare name; this says what it means and what to do. */
const OWN_WORDS: Partial<Record<WriteFailureReason, string>> = {
  'storage-full':
    'There is no room left for records on this device. What was written before is safe; make room and write again.',
  closed: 'The records were closed, by the browser or by a newer version in another tab. Load the page again.',
};

/** An aborted transaction carries its cause inside: the whole chain is searched. */
export function failureOf(error: unknown): WriteFailure {
  const chain = causesOf(error);
  const reason = reasonOf(chain);
  const found = chain.map(messageOf).find((text) => text !== '');
  return { written: false, reason, message: OWN_WORDS[reason] ?? found ?? 'The database gave no reason.' };
}

function reasonOf(chain: readonly unknown[]): WriteFailureReason {
  const names = chain.map(nameOf);
  if (names.includes('QuotaExceededError')) return 'storage-full';
  if (names.includes('NotARecordError')) return 'not-a-record';
  if (names.some((name) => CLOSED_NAMES.includes(name))) return 'closed';
  return 'failed';
}

function causesOf(error: unknown): unknown[] {
  const chain: unknown[] = [];
  const waiting: unknown[] = [error];
  while (waiting.length > 0 && chain.length < 20) {
    const cause = waiting.shift();
    if (typeof cause !== 'object' || cause === null || chain.includes(cause)) continue;
    chain.push(cause);
    if ('inner' in cause) waiting.push(cause.inner);
    if ('cause' in cause) waiting.push(cause.cause);
    if ('failures' in cause && Array.isArray(cause.failures)) waiting.push(cause.failures[0]);
  }
  return chain.length > 0 ? chain : [error];
}

function nameOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'name' in error ? String(error.name) : '';
}

function messageOf(error: unknown): string {
  return typeof error === 'object' && error !== null && 'message' in error ? String(error.message) : String(error);
}
