/**
 * Files in the microphone's place, one for each time that the page opens it, each played once, or so many times; and a log, on the
 * clock of the sound, of what the workers told the page and when it stood on the screen. It leaves out the device and Chromium's
 * stream buffer.
 */
import type { BrowserContext, Page } from 'playwright-core';
import { texts } from '../../../src/ui/texts.ts';
import type { ListeningReport } from '../../../src/workers/listeningMessages.ts';

export type ToldTake = {
  /** Since listening began. */
  readonly startS: number;
  readonly onsetS: number;
  readonly durationS: number;
  readonly endedBy: string;
  /** Null where no note was found. */
  readonly midi: number | null;
  readonly offsetCents: number;
  readonly isUsable: boolean;
  readonly faults: readonly string[];
  /** When the page was told, since the file began. */
  readonly toldAtS: number;
  /** When it stood on the screen; null if it never did. */
  readonly shownAtS: number | null;
};

/** What the page was told of a take that still sounded. */
export type ToldEarly = {
  /** The same as its take's. */
  readonly onsetS: number;
  readonly midi: number;
  readonly toldAtS: number;
  /** Null if it never stood on the screen; then there is no text either. */
  readonly shownAtS: number | null;
  readonly shownText: string | null;
};

export type MicrophoneLog = {
  takes: ToldTake[];
  early: ToldEarly[];
  holes: string[];
  /** Onsets of takes whose samples are not those of the file at their place: sound was lost or inserted before them. */
  shiftedAtS: number[];
  /** Steps of the page's own thread that took longer than 50 ms while it listened. */
  longStepsMs: number[];
};

declare global {
  /** `soundS`: how long the file has been playing. */
  var microphone: { log: MicrophoneLog; track: MediaStreamTrack | undefined; soundS: () => number };
}

export async function watchMicrophone(context: BrowserContext, waves: readonly Buffer[], times = 1): Promise<void> {
  let opened = 0;
  await context.route('**/__microphone.wav', (route) => {
    const body = waves[Math.min(opened, waves.length - 1)];
    opened += 1;
    return route.fulfill({ ...(body && { body }), contentType: 'audio/wav' });
  });
  const heardLabel = texts.recording.heard;
  await context.addInitScript(
    ({ heardLabel, times }) => {
      const log: MicrophoneLog = { takes: [], early: [], holes: [], shiftedAtS: [], longStepsMs: [] };
      globalThis.microphone = { log, track: undefined, soundS: () => soundS() };
      let file: ArrayBuffer | undefined;
      let soundS = () => 0;
      let fileSamples = new Float32Array();
      let takesBeganAt: number | undefined;
      const LATEST_BEGINNING_S = 20;
      navigator.mediaDevices.getUserMedia = async () => {
        file = await (await fetch('/__microphone.wav', { cache: 'no-store' })).arrayBuffer();
        const { stream } = new MediaStreamAudioDestinationNode(new AudioContext(), { channelCount: 1 });
        microphone.track = stream.getTracks()[0];
        return stream;
      };
      AudioContext.prototype.createMediaStreamSource = function (this: AudioContext) {
        const output = new GainNode(this);
        const play = async () => {
          const buffer = await this.decodeAudioData((file ?? new ArrayBuffer()).slice(0));
          const source = new AudioBufferSourceNode(this, { buffer, loop: times > 1 });
          source.connect(output);
          fileSamples = buffer.getChannelData(0);
          takesBeganAt = undefined;
          const beginsAt = this.currentTime + 0.05;
          soundS = () => this.currentTime - beginsAt;
          source.start(beginsAt);
          source.stop(beginsAt + times * buffer.duration);
          const steps = new PerformanceObserver((list) => {
            for (const { duration } of list.getEntries()) log.longStepsMs.push(duration);
          });
          steps.observe({ type: 'longtask' });
        };
        void play();
        return output as unknown as MediaStreamAudioSourceNode;
      };
      const shownText = () => document.querySelector(`section[aria-label="${heardLabel}"]`)?.textContent ?? '';
      const whenShown = (settle: (shownAtS: number, shownText: string) => void) => {
        const before = shownText();
        const watch = new MutationObserver(() => {
          const text = shownText();
          if (text === before) return;
          watch.disconnect();
          requestAnimationFrame(() => settle(soundS(), text));
        });
        watch.observe(document.body, { subtree: true, childList: true, characterData: true });
      };
      const isAt = (samples: Float32Array, start: number) => {
        const { length } = fileSamples;
        return samples.every((value, i) => fileSamples[(((start + i) % length) + length) % length] === value);
      };
      /** Where in the file the first take begins; it began to play some time after listening did. Undefined where it has no such place. */
      const placeInFile = (samples: Float32Array, startIndex: number, sampleRateHz: number): number | undefined => {
        const last = startIndex - LATEST_BEGINNING_S * sampleRateHz;
        for (let start = startIndex + sampleRateHz; start > last; start -= 1) if (isAt(samples, start)) return start;
        return undefined;
      };
      const compareWithFile = ({
        samples,
        sampleRateHz,
        startS,
        onsetS,
      }: Extract<ListeningReport, { kind: 'take' }>) => {
        const startIndex = Math.round(startS * sampleRateHz);
        if (takesBeganAt === undefined) {
          const place = placeInFile(samples, startIndex, sampleRateHz);
          if (place !== undefined) takesBeganAt = place - startIndex;
        }
        const isSame = takesBeganAt !== undefined && isAt(samples, startIndex + takesBeganAt);
        if (!isSame) log.shiftedAtS.push(onsetS);
      };
      const note = (report: ListeningReport) => {
        if (report.kind === 'hole') log.holes.push(report.cause);
        if (report.kind === 'early') {
          const { onsetS, midi } = report;
          const early: ToldEarly = { onsetS, midi, toldAtS: soundS(), shownAtS: null, shownText: null };
          const place = log.early.push(early) - 1;
          whenShown((shownAtS, shownText) => {
            log.early[place] = { ...early, shownAtS, shownText };
          });
        }
        if (report.kind !== 'take') return;
        compareWithFile(report);
        const { startS, onsetS, durationS, endedBy, outcome } = report;
        const reading = outcome.found ? outcome.reading : undefined;
        const take: ToldTake = {
          startS,
          onsetS,
          durationS,
          endedBy,
          midi: reading?.midi ?? null,
          offsetCents: reading?.offsetCents ?? 0,
          isUsable: reading?.quality.isUsable ?? false,
          faults: reading?.quality.faults ?? [],
          toldAtS: soundS(),
          shownAtS: null,
        };
        const place = log.takes.push(take) - 1;
        whenShown((shownAtS) => {
          log.takes[place] = { ...take, shownAtS };
        });
      };
      const Plain = Worker;
      globalThis.Worker = class extends Plain {
        constructor(url: string | URL, options?: WorkerOptions) {
          super(url, options);
          this.addEventListener('message', ({ data }: MessageEvent<ListeningReport>) => note(data));
        }
      };
    },
    { heardLabel, times },
  );
}

export const microphoneLog = (page: Page): Promise<MicrophoneLog> => page.evaluate(() => microphone.log);

/** Keeps the page's own thread busy as charts do that are drawn anew: a long step, several times a second. */
export async function redrawCharts(page: Page, stepMs: number, everyMs: number): Promise<void> {
  await page.evaluate(
    ([step, every]) => {
      setInterval(() => {
        const until = performance.now() + step;
        while (performance.now() < until);
      }, every);
    },
    [stepMs, everyMs] as const,
  );
}
