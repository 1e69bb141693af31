/** The page's side of the two workers: one cuts the sound into takes, the other measures them meanwhile. */
import type {
  ClockMessage,
  EarlyMessage,
  HoleMessage,
  LevelMessage,
  ListeningReport,
  ListeningRequest,
  ListeningSettings,
  MeasuringSetUp,
  RoomMessage,
  TakeMessage,
} from './listeningMessages.ts';
import { parseListeningReport } from './parseMessage.ts';

export type ListeningHandlers = {
  /** Every take with its outcome, in the order played; a take with a hole in it is never usable. */
  readonly onTake: (take: TakeMessage) => void;
  /** What a take that still sounds looks like so far; the take itself follows. At most a few for each take, often one. */
  readonly onEarly?: (early: EarlyMessage) => void;
  /** A fault of the program itself. What was heard before it has been told. */
  readonly onFailed: (detail: string) => void;
  /** Ten times a second. */
  readonly onLevel?: (level: LevelMessage) => void;
  /** As soon as a strike is noticed; a take with its figures follows when the note has ended. */
  readonly onStrike?: (atS: number) => void;
  readonly onHole?: (hole: HoleMessage) => void;
  readonly onRoomLevel?: (levelDbfs: number) => void;
  /** Every two seconds of quiet until the first take. */
  readonly onRoom?: (room: RoomMessage) => void;
  readonly onClock?: (clock: ClockMessage) => void;
};

/** Fits the sink that `startListening` asks for. */
export type ListeningDesk = {
  readonly open: (blocks: MessagePort, sampleRateHz: number) => void;
  readonly pause: () => void;
  readonly resume: () => void;
  readonly markHole: () => void;
  readonly finish: () => Promise<void>;
  /** For strikes from now on: another string, another note to expect. Not needed while a walk goes note by note. */
  readonly set: (settings: ListeningSettings) => void;
  /** Ends both workers. Call after `finish`, or to give up. */
  readonly close: () => void;
};

export function openListening(settings: ListeningSettings, handlers: ListeningHandlers): ListeningDesk {
  const listening = new Worker(new URL('./listening.worker.ts', import.meta.url), { type: 'module' });
  const measuring = new Worker(new URL('./measuring.worker.ts', import.meta.url), { type: 'module' });
  let settle: () => void = () => undefined;
  const finished = new Promise<void>((resolve) => {
    settle = resolve;
  });
  for (const worker of [listening, measuring]) {
    worker.onmessage = (event) => {
      const report = parseListeningReport(event.data);
      if (report.kind === 'finished') settle();
      else tell(report, handlers);
    };
    worker.onerror = (event) => {
      const isLoaded = typeof event.message === 'string' && event.message !== '';
      handlers.onFailed(isLoaded ? event.message : 'a worker of this page could not be loaded');
      if (!isLoaded) settle(); // it will never say that it has finished
    };
  }
  const ask = (request: ListeningRequest, transfer: Transferable[] = []) => listening.postMessage(request, transfer);
  return {
    open: (blocks, sampleRateHz) => {
      const segments = new MessageChannel();
      const setUp: MeasuringSetUp = { kind: 'segments-from', segments: segments.port1 };
      measuring.postMessage(setUp, [segments.port1]);
      ask({ kind: 'open', blocks, measuring: segments.port2, sampleRateHz, settings }, [blocks, segments.port2]);
    },
    pause: () => ask({ kind: 'pause' }),
    resume: () => ask({ kind: 'resume' }),
    markHole: () => ask({ kind: 'hole' }),
    finish: () => {
      ask({ kind: 'finish' });
      return finished;
    },
    set: (next) => ask({ kind: 'settings', settings: next }),
    close: () => {
      listening.terminate();
      measuring.terminate();
    },
  };
}

type Told = Exclude<ListeningReport, { kind: 'finished' }>;

function tell(report: Told, handlers: ListeningHandlers): void {
  if (report.kind === 'take') handlers.onTake(report);
  else if (report.kind === 'early') handlers.onEarly?.(report);
  else if (report.kind === 'level') handlers.onLevel?.(report);
  else if (report.kind === 'strike') handlers.onStrike?.(report.atS);
  else if (report.kind === 'hole') handlers.onHole?.(report);
  else if (report.kind === 'room') handlers.onRoom?.(report);
  else if (report.kind === 'room-level') handlers.onRoomLevel?.(report.levelDbfs);
  else if (report.kind === 'clock') handlers.onClock?.(report);
  else handlers.onFailed(report.detail);
}
