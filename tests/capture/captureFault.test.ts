import { expect, it } from 'vitest';
import { faultFromError } from '../../src/capture/captureFault.ts';

it.each([
  ['NotAllowedError', 'microphone-refused'],
  ['SecurityError', 'microphone-refused'],
  ['NotFoundError', 'no-microphone'],
  ['OverconstrainedError', 'no-microphone'],
  ['NotReadableError', 'microphone-busy'],
  ['AbortError', 'microphone-busy'],
  ['NotSupportedError', 'not-supported'],
])('takes %s for %s and keeps the browser’s words', (name, reason) => {
  const fault = faultFromError(new DOMException('its own words', name));
  expect(fault).toEqual({ started: false, reason, detail: `${name}: its own words` });
});

it('has an answer for what is not an error at all', () => {
  expect(faultFromError('odd')).toMatchObject({ started: false, reason: 'not-supported' });
});
