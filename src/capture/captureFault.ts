/** Why listening could not start. A closed list: screens have words and a remedy for each. */
export type CaptureFaultReason =
  | 'microphone-refused'
  | 'no-microphone'
  | 'microphone-busy'
  | 'not-supported'
  | 'audio-blocked';

export type CaptureFault = {
  readonly started: false;
  readonly reason: CaptureFaultReason;
  /** The browser's own words, for the details line. */
  readonly detail: string;
};

/** Names of the errors that getUserMedia gives (W3C Media Capture and Streams, section 10.2). */
const REASON_BY_ERROR_NAME: Readonly<Record<string, CaptureFaultReason>> = {
  NotAllowedError: 'microphone-refused',
  SecurityError: 'microphone-refused',
  NotFoundError: 'no-microphone',
  OverconstrainedError: 'no-microphone',
  NotReadableError: 'microphone-busy',
  AbortError: 'microphone-busy',
};

export function captureFault(reason: CaptureFaultReason, detail: string): CaptureFault {
  return { started: false, reason, detail };
}

/** What an error thrown on the way to the microphone means; one that no specification names counts as `not-supported`. */
export function faultFromError(error: unknown): CaptureFault {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  const detail = error instanceof Error || error instanceof DOMException ? error.message : String(error);
  return captureFault(REASON_BY_ERROR_NAME[name] ?? 'not-supported', `${name}: ${detail}`);
}
