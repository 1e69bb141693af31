/** Hands capture and workers to the tests, built as the app builds them. */
import { type ListeningOptions, startListening } from '../../../src/capture/startListening.ts';
import type { ListeningReport, ListeningSettings } from '../../../src/workers/listeningMessages.ts';
import { openListening } from '../../../src/workers/openListening.ts';
import workletUrl from '../../../worklets/captureBlocks.ts?worker&url';

type Told = { reports: ListeningReport[]; failures: string[] };

/** Both workers, with everything that they tell kept in order. */
function openAndNote(settings: ListeningSettings) {
  const told: Told = { reports: [], failures: [] };
  const note = (report: ListeningReport) => told.reports.push(report);
  const desk = openListening(settings, {
    onTake: note,
    onEarly: note,
    onLevel: note,
    onHole: note,
    onClock: note,
    onStrike: (atS) => note({ kind: 'strike', atS }),
    onRoomLevel: (levelDbfs) => note({ kind: 'room-level', levelDbfs }),
    onFailed: (detail) => told.failures.push(detail),
  });
  return { desk, told };
}

/** The whole path from the microphone on, with every loss and return kept in order. */
async function listenAndNote(settings: ListeningSettings, options: Partial<ListeningOptions> = {}) {
  const { desk, told } = openAndNote(settings);
  const losses: string[] = [];
  const listening = await startListening({
    sink: desk,
    onLost: (loss) => losses.push(loss.reason),
    onRestored: () => losses.push('restored'),
    ...options,
  });
  const session = { desk, told, losses, listening };
  globalThis.session = session;
  return session;
}

const tools = { startListening, openListening, openAndNote, listenAndNote, workletUrl };

declare global {
  var harness: typeof tools;
  /** The last one begun. */
  var session: Awaited<ReturnType<typeof listenAndNote>>;
}
globalThis.harness = tools;
