/** Opens the microphone and leads its sound, past the page, to whoever listens. */
import workletUrl from '../../worklets/captureBlocks.ts?worker&url';
import type { BlockRequest } from '../piano/soundBlock.ts';
import { type CaptureFault, captureFault, faultFromError } from './captureFault.ts';
import { microphoneConstraints, reportSettings, type SettingsReport } from './microphoneSettings.ts';
import type { SoundSink } from './soundSink.ts';
import { type Loss, watchForLoss } from './watchForLoss.ts';

export type ListeningOptions = {
  readonly sink: SoundSink;
  /** Absent: the browser's default microphone. */
  readonly deviceId?: string;
  readonly onLost: (loss: Loss) => void;
  /** The sound is back after a loss that could return; the take it fell into is marked as broken. */
  readonly onRestored?: () => void;
};

export type Listening = SettingsReport & {
  readonly started: true;
  readonly deviceLabel: string;
  /** The rate at which samples arrive: the device's own where the browser tells it. */
  readonly sampleRateHz: number;
  readonly pause: () => void;
  /** After a pause or an interruption. False: the browser keeps the sound back, for instance until a touch. */
  readonly resume: () => Promise<boolean>;
  /** Releases the microphone; resolves when every take heard until now has been dealt with. */
  readonly stop: () => Promise<void>;
};

/** Must be called from a click, touch or key press, since browsers start sound only then. */
export async function startListening(options: ListeningOptions): Promise<Listening | CaptureFault> {
  // Absent on pages that are not served securely (https or localhost).
  if (navigator.mediaDevices?.getUserMedia === undefined || globalThis.AudioWorkletNode === undefined)
    return captureFault('not-supported', 'no microphone access on this page (https or localhost is needed)');
  let stream: MediaStream | undefined;
  let context: AudioContext | undefined;
  try {
    stream = await navigator.mediaDevices.getUserMedia({ audio: microphoneConstraints(options.deviceId) });
    context = contextFor(stream);
    const isRunning = await start(context);
    if (!isRunning) throw new AudioBlocked();
    const graph = await connect(stream, context, options.sink);
    return listeningOn(stream, context, graph, options);
  } catch (error) {
    for (const track of stream?.getTracks() ?? []) track.stop();
    await context?.close();
    return error instanceof AudioBlocked ? captureFault('audio-blocked', error.message) : faultFromError(error);
  }
}

class AudioBlocked extends Error {
  override readonly message = 'the browser keeps the sound back until the page is clicked or touched';
}

/** At the microphone's own rate, so that nothing is resampled on the way; the browser's choice where it does not tell. */
function contextFor(stream: MediaStream): AudioContext {
  const sampleRate = firstTrack(stream).getSettings().sampleRate;
  return new AudioContext(sampleRate === undefined ? {} : { sampleRate });
}

function firstTrack(stream: MediaStream): MediaStreamTrack {
  const track = stream.getAudioTracks()[0];
  if (track === undefined) throw new DOMException('the stream has no sound track', 'NotFoundError');
  return track;
}

/** How long a context may take to run. One that waits for a gesture never answers, so the wait needs an end. */
const START_PATIENCE_MS = 3000;

async function start(context: AudioContext): Promise<boolean> {
  const patience = new Promise<void>((resolve) => setTimeout(resolve, START_PATIENCE_MS));
  await Promise.race([context.resume(), patience]);
  return context.state === 'running';
}

/** Both ends are kept: a source that nothing refers to may be collected as garbage while it sounds. */
type Graph = { readonly source: MediaStreamAudioSourceNode; readonly node: AudioWorkletNode };

async function connect(stream: MediaStream, context: AudioContext, sink: SoundSink): Promise<Graph> {
  await context.audioWorklet.addModule(workletUrl);
  const node = new AudioWorkletNode(context, 'capture-blocks', {
    numberOfInputs: 1,
    numberOfOutputs: 0,
    channelCount: 1,
    channelCountMode: 'explicit',
  });
  const channel = new MessageChannel();
  ask(node, { kind: 'connect', blocks: channel.port1 }, [channel.port1]);
  sink.open(channel.port2, context.sampleRate);
  const source = context.createMediaStreamSource(stream);
  source.connect(node);
  return { source, node };
}

function ask(node: AudioWorkletNode, request: BlockRequest<MessagePort>, transfer: Transferable[] = []): void {
  node.port.postMessage(request, transfer);
}

function listeningOn(
  stream: MediaStream,
  context: AudioContext,
  { source, node }: Graph,
  { sink, onLost, onRestored }: ListeningOptions,
): Listening {
  const track = firstTrack(stream);
  const restored = () => {
    sink.markHole();
    onRestored?.();
  };
  const endWatch = watchForLoss(track, context, { onLost, onRestored: restored });
  return {
    started: true,
    deviceLabel: track.label,
    sampleRateHz: context.sampleRate,
    ...reportSettings(track.getSettings()),
    pause: () => {
      ask(node, { kind: 'flush' });
      sink.pause();
      track.enabled = false;
    },
    resume: async () => {
      if (!(await start(context))) return false;
      track.enabled = true;
      sink.resume();
      return true;
    },
    stop: async () => {
      endWatch();
      ask(node, { kind: 'flush' });
      await sink.finish();
      source.disconnect();
      track.stop();
      await context.close();
    },
  };
}
