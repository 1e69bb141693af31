import { useRef, useState } from 'react';
import { type Microphone, useListening } from '../../listening/useListening.ts';
import { type SoundStore, useSoundStore } from '../../listening/useSoundStore.ts';
import { type TakeStore, useTakeStore } from '../../listening/useTakeStore.ts';
import type { TakeId, TrialId } from '../../piano/ids.ts';
import type { Survey, Take } from '../../piano/instrument.ts';
import type { TrialKind } from '../../piano/stringingRecords.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { measuredNow } from '../../ui/programVersion.ts';
import type { ListeningSettings, TakeMessage } from '../../workers/listeningMessages.ts';
import { type BenchPlan, mayBeKept } from './benchSurvey.ts';
import type { StringPlace } from './stringKey.ts';
import type { StringTake } from './stringReadings.ts';
import { AS_IT_WAS, type TrialSide, trialOfSide, withTake } from './trialSides.ts';

export type TrialRecorder = {
  readonly microphone: Microphone;
  readonly store: TakeStore;
  readonly soundStore: SoundStore;
  /** In the order recorded; the last one is being recorded. */
  readonly sides: readonly TrialSide[];
  /** The last sound was no note. */
  readonly isNothing: boolean;
  readonly trialFault: WriteFailure | null;
  readonly start: () => void;
  /** Something was done to the string: what is heard from now on comes after it. */
  readonly nextSide: (kind: TrialKind, remark: string) => void;
  readonly end: () => Promise<void>;
};

type Bench = Pick<BenchPlan, 'visit' | 'survey'>;

/** Records one known string, again and again, and makes a trial of each recording that follows on something done. */
export function useTrialRecorder(
  records: Records,
  { visit, survey }: Bench,
  place: StringPlace,
  takes: readonly StringTake[],
): TrialRecorder {
  const store = useTakeStore(records, survey.id);
  const soundStore = useSoundStore(records);
  const [sides, setSides] = useState<readonly TrialSide[]>([AS_IT_WAS]);
  const latestSides = useRef(sides);
  /** A take was struck before the last side began and has not been told yet: it belongs to the side before. */
  const stillSounds = useRef(false);
  const [isNothing, setNothing] = useState(false);
  const [trialFault, setTrialFault] = useState<WriteFailure | null>(null);
  const device = useRef<Pick<Survey, 'deviceLabel' | 'sampleRateHz'>>(survey);
  const settings: ListeningSettings = { pitchStandardHz: visit.pitchStandardHz, ...place };
  const put = (next: readonly TrialSide[]) => {
    latestSides.current = next;
    setSides(next);
  };
  const owner = { instrumentId: survey.instrumentId, visitId: visit.id, surveyId: survey.id, ...place };
  const saveTrial = async (recorded: readonly TrialSide[], sideIndex: number) => {
    const trial = trialOfSide(recorded, sideIndex, owner, new Date().toISOString());
    if (!trial) return;
    const outcome = await records.saveTrial(trial);
    setTrialFault(outcome.written ? null : outcome);
  };
  const onTake = (told: TakeMessage) => {
    const sideIndex = latestSides.current.length - (stillSounds.current ? 2 : 1);
    stillSounds.current = false;
    setNothing(!told.outcome.found);
    if (!told.outcome.found) return;
    const { reading } = told.outcome;
    const isFirst = sideIndex === 0 && latestSides.current[0]?.takeIds.length === 0;
    const take: Take = {
      id: newId<TakeId>(),
      ...owner,
      recordedAt: new Date().toISOString(),
      isKept: reading.quality.isUsable && mayBeKept(takes, visit.id, place, isFirst),
      reading: { ...reading, ...place },
      measured: measuredNow(),
    };
    put(withTake(latestSides.current, sideIndex, take.id, reading.quality.isUsable));
    const recorded = latestSides.current;
    store.store(take, () => {
      soundStore.keep(take, told);
      void saveTrial(recorded, sideIndex);
    });
  };
  const saveSurvey = (finishedAt: string | null) => records.saveSurvey({ ...survey, ...device.current, finishedAt });
  const microphone = useListening({
    onTake,
    onStarted: ({ deviceLabel, sampleRateHz }) => {
      device.current = { deviceLabel, sampleRateHz };
      void saveSurvey(null);
    },
    onClock: () => undefined,
  });
  const start = () => void microphone.start(settings);
  const nextSide = (kind: TrialKind, remark: string) => {
    stillSounds.current = microphone.isStruck;
    put([...latestSides.current, { ...AS_IT_WAS, kind, remark, trialId: newId<TrialId>() }]);
  };
  const end = async () => {
    await microphone.stop();
    await store.settled();
    await soundStore.settled();
    await saveSurvey(new Date().toISOString());
  };
  return { microphone, store, soundStore, sides, isNothing, trialFault, start, nextSide, end };
}
