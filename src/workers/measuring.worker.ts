/** Measures one cut take after the other and tells the page. Takes that come meanwhile wait in the port's queue. */
import type { ListeningReport, SegmentToMeasure, TakeMessage } from './listeningMessages.ts';
import { measureSegment, takeOf } from './measureSegment.ts';
import { parseMeasuringRequest, parseMeasuringSetUp } from './parseMessage.ts';
import { createWalk } from './walk.ts';
import type { WorkerScope } from './workerScope.ts';

const scope = globalThis as unknown as WorkerScope<ListeningReport>;
const walk = createWalk();

scope.onmessage = (event) => {
  parseMeasuringSetUp(event.data).segments.onmessage = (segmentEvent: MessageEvent<unknown>) => {
    const request = parseMeasuringRequest(segmentEvent.data);
    if (request.kind === 'end') scope.postMessage({ kind: 'finished' });
    else post(measureOrTell(request));
  };
};

function post(take: TakeMessage): void {
  scope.postMessage(take, [take.samples.buffer]);
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
