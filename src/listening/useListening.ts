import { useEffect, useRef, useState } from 'react';
import type { AwakeState } from '../capture/keepScreenAwake.ts';
import type { MicrophoneSetting } from '../capture/microphoneSettings.ts';
import { type Listening, startListening } from '../capture/startListening.ts';
import type { Loss } from '../capture/watchForLoss.ts';
import type { ClockMessage, EarlyMessage, ListeningSettings, TakeMessage } from '../workers/listeningMessages.ts';
import { type ListeningDesk, openListening } from '../workers/openListening.ts';
import { type LevelView, levelView, SILENT_LEVEL } from './levelView.ts';
import { nextRoom, type RoomEvent, type RoomState, UNHEARD_ROOM } from './roomState.ts';
import type { Source } from './source.ts';
import { useAwakeScreen } from './useAwakeScreen.ts';

export type ListeningEvents = {
  readonly onTake: (take: TakeMessage) => void;
  readonly onClock: (clock: ClockMessage) => void;
  readonly onStarted: (device: { readonly deviceLabel: string; readonly sampleRateHz: number }) => void;
};

export type Microphone = {
  readonly source: Source;
  /** Whether the screen stays lit; told while listening. */
  readonly awake: AwakeState;
  /** Null while nothing is heard. */
  readonly level: LevelView | null;
  /** What the take that still sounds looks like so far; null once it was told as a whole. */
  readonly early: EarlyMessage | null;
  /** A strike was noticed and its take is not there yet. */
  readonly isStruck: boolean;
  /** Sound was missing since the last take. */
  readonly hasHole: boolean;
  /** What is known of the room; null from the first take on. */
  readonly room: RoomState | null;
  readonly notHonoured: readonly MicrophoneSetting[];
  readonly start: (settings: ListeningSettings) => Promise<void>;
  readonly pause: () => void;
  readonly resume: () => Promise<void>;
  /** Resolves when everything heard until now was told. */
  readonly stop: () => Promise<void>;
  readonly set: (settings: ListeningSettings) => void;
};

type Session = { readonly listening: Listening; readonly desk: ListeningDesk };

/** The microphone and the two workers behind it, for as long as the screen is open. */
export function useListening(events: ListeningEvents): Microphone {
  const [source, setSource] = useState<Source>({ state: 'off' });
  const [level, setLevel] = useState<LevelView | null>(null);
  const [early, setEarly] = useState<EarlyMessage | null>(null);
  const [isStruck, setStruck] = useState(false);
  const [hasHole, setHole] = useState(false);
  const [notHonoured, setNotHonoured] = useState<readonly MicrophoneSetting[]>([]);
  const [room, setRoom] = useState<RoomState | null>(null);
  const session = useRef<Session | null>(null);
  const latestEvents = useRef(events);
  latestEvents.current = events;

  const stop = async () => {
    const ending = session.current;
    session.current = null;
    setLevel(null);
    if (!ending) return;
    await ending.listening.stop();
    ending.desk.close();
    setEarly(null);
  };
  const hearRoom = (event: RoomEvent) => setRoom((known) => known && nextRoom(known, event));
  const onTake = (take: TakeMessage) => {
    setRoom(null);
    setEarly(null);
    setStruck(false);
    setHole(take.hasHole);
    latestEvents.current.onTake(take);
  };
  const onFailed = (detail: string) => setSource({ state: 'broken', detail });
  const onLost = ({ reason, mayReturn }: Loss) => {
    setSource({ state: 'lost', reason, mayReturn });
    if (!mayReturn) void stop();
  };
  const start = async (settings: ListeningSettings) => {
    setSource({ state: 'asking' });
    await stop();
    const desk = openListening(settings, {
      onTake,
      onEarly: setEarly,
      onFailed,
      onLevel: ({ peakDbfs, isClipped }) => {
        setLevel(levelView(peakDbfs, isClipped));
        hearRoom({ kind: 'level', level: { peakDbfs, isClipped } });
      },
      onStrike: () => {
        setStruck(true);
        hearRoom({ kind: 'strike' });
      },
      onRoom: (quiet) => hearRoom({ kind: 'quiet', quiet }),
      onHole: () => setHole(true),
      onClock: (point) => latestEvents.current.onClock(point),
    });
    const onRestored = () => setSource({ state: 'listening' });
    const listening = await startListening({ sink: desk, onLost, onRestored });
    if (!listening.started) {
      desk.close();
      setSource({ state: 'refused', reason: listening.reason, detail: listening.detail });
      return;
    }
    session.current = { listening, desk };
    setNotHonoured(listening.notHonoured);
    setLevel(SILENT_LEVEL);
    setRoom(UNHEARD_ROOM);
    setSource({ state: 'listening' });
    latestEvents.current.onStarted(listening);
  };
  const pause = () => {
    session.current?.listening.pause();
    setSource({ state: 'paused' });
    setLevel(null);
  };
  const resume = async () => {
    const isBack = (await session.current?.listening.resume()) ?? false;
    setSource(isBack ? { state: 'listening' } : { state: 'refused', reason: 'audio-blocked', detail: '' });
  };
  const set = (settings: ListeningSettings) => session.current?.desk.set(settings);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the screen closes
  useEffect(() => () => void stop(), []);
  const awake = useAwakeScreen(source.state === 'listening');
  return { source, awake, level, early, isStruck, hasHole, room, notHonoured, start, pause, resume, stop, set };
}
