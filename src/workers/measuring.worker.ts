/** Measures one cut take after the other and tells the page; between them, what still sounds. */
import type { EarlyToMeasure, ListeningReport, SegmentToMeasure, TakeMessage } from './listeningMessages.ts';
import { measureEarly } from './measureEarly.ts';
import { measureSegment, takeOf } from './measureSegment.ts';
import { createMeasuringQueue } from './measuringQueue.ts';
import { parseMeasuringRequest, parseMeasuringSetUp } from './parseMessage.ts';
import { createWalk } from './walk.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<ListeningReport>;
const walk = createWalk();
const queue = createMeasuringQueue();

scope.onmessage = (event) => {
  parseMeasuringSetUp(event.data).segments.onmessage = (requestEvent: MessageEvent<unknown>) => {
    queue.add(parseMeasuringRequest(requestEvent.data));
    setTimeout(doNext); // after what came while the last one was measured has been put into the queue
  };
};

function doNext(): void {
  const request = queue.next();
  if (request?.kind === 'segment') post(measureOrTell(request));
  else if (request?.kind === 'early') postEarly(request);
  else if (request?.kind === 'end') scope.postMessage({ kind: 'finished' });
}

function post(take: TakeMessage): void {
  scope.postMessage(take, [take.samples.buffer]);
}

function postEarly(sounding: EarlyToMeasure): void {
  const early = measureEarly(sounding, walk.expectedMidi(sounding));
  if (early) scope.postMessage(early);
}

/** A take that the measuring broke on is told all the same, with its sound: nothing heard is lost. */
function measureOrTell(segment: SegmentToMeasure): TakeMessage {
  try {
    const take = measureSegment(segment, walk.expectedMidi(segment));
    walk.hear(take.outcome);
    return take;
  } catch (error) {
    const detail = `the measuring broke off: ${error instanceof Error ? error.message : String(error)}`;
    scope.postMessage({ kind: 'failed', detail });
    return takeOf(segment, { found: false, reason: 'no-pitch', detail });
  }
}
