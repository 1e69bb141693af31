/** Listens for a reference tone and measures it. */
import { createFrameCount } from './frameCount.ts';
import { parseBlockMessage } from './parseMessage.ts';
import { createReferenceEar, type ReferenceEar } from './referenceEar.ts';
import { parseReferenceRequest, type ReferenceReport, type ReferenceRequest } from './referenceMessages.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<ReferenceReport>;
let ear: ReferenceEar | undefined;

scope.onmessage = (event) => {
  const request = parseReferenceRequest(event.data);
  if (request.kind === 'open') ear = open(request);
  else ear?.startAfresh();
};

function open({ blocks, sampleRateHz, expectedHz }: Extract<ReferenceRequest, { kind: 'open' }>): ReferenceEar {
  const opened = createReferenceEar(sampleRateHz, expectedHz);
  const frames = createFrameCount();
  blocks.onmessage = (event: MessageEvent<unknown>) => {
    const message = parseBlockMessage(event.data);
    if (message.kind !== 'block') return;
    if (frames.missingBefore(message) !== 0) opened.startAfresh();
    for (const news of opened.hear(message.samples)) scope.postMessage(news);
  };
  return opened;
}
