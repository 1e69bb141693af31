import { useEffect } from 'react';
import { levelWord } from '../../listening/levelWord.ts';
import { SourceNotice } from '../../listening/SourceNotice.tsx';
import { formatDate } from '../../piano/format.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { LevelBar } from '../../ui/LevelBar.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import type { BenchPlan } from './benchSurvey.ts';
import { NextSide } from './NextSide.tsx';
import { SideList } from './SideList.tsx';
import type { StringPlace } from './stringKey.ts';
import type { StringRecords } from './stringReadings.ts';
import styles from './TrialRecorder.module.css';
import { useBenchSurvey } from './useBenchSurvey.ts';
import { useTrialRecorder } from './useTrialRecorder.ts';

const words = texts.strings.trials.record;

type Props = { readonly records: Records; readonly strings: StringRecords; readonly place: StringPlace };

/** Record the string, do something, record it again, as often as wanted. */
export function TrialRecorder(props: Props) {
  const { records, strings, place } = props;
  const bench = useBenchSurvey(records, strings, place);
  const { makesVisit, makesSurvey } = bench.plan;
  if (bench.begun) return <RunningRecorder {...props} bench={bench.begun} />;
  return (
    <>
      <p className={styles.text}>{words.beginHint}</p>
      <p className={styles.text}>
        {makesVisit ? words.willMakeBoth : makesSurvey ? words.willMakeSurvey : words.usesSurvey} {words.aside}
      </p>
      <Button look="primary" onPress={() => void bench.begin()}>
        {words.begin}
      </Button>
      <WriteFault fault={bench.fault} />
    </>
  );
}

function RunningRecorder({ records, strings, place, bench }: Props & { readonly bench: BenchPlan }) {
  const recorder = useTrialRecorder(records, bench, place, strings.takes);
  const { microphone, store, sides, isNothing } = recorder;
  // biome-ignore lint/correctness/useExhaustiveDependencies: listening begins once, with the press that opened this
  useEffect(() => recorder.start(), []);
  const isListening = microphone.source.state === 'listening';
  const takeCount = sides.reduce((sum, { takeIds }) => sum + takeIds.length, 0);
  return (
    <div className={styles.recorder}>
      {bench.makesVisit && (
        <p>
          {words.madeSentence}{' '}
          <a href={routeToHref({ screen: 'visit', visitId: bench.visit.id })}>
            {words.made(formatDate(bench.visit.visitedOn))}
          </a>
        </p>
      )}
      <SourceNotice
        source={microphone.source}
        takeCount={takeCount - store.unstoredCount}
        onStart={recorder.start}
        onResume={() => void microphone.resume()}
      />
      {microphone.level && (
        <LevelBar
          label={texts.recording.level.label}
          share={microphone.level.share}
          zone={microphone.level.zone}
          word={levelWord(microphone.level.zone, microphone.isStruck)}
        />
      )}
      <SideList sides={sides} />
      <p role="status">{isListening && (isNothing ? words.nothing : words.playNow)}</p>
      {microphone.hasHole && (
        <Notice kind="caution" word={texts.common.cautionWord}>
          {texts.recording.hole}
        </Notice>
      )}
      {isListening && <NextSide recorder={recorder} />}
      <WriteFault fault={store.fault ?? recorder.trialFault} />
      {store.unstoredCount > 0 && (
        <FieldRow>
          <p>{words.unstored(store.unstoredCount)}</p>
          <Button onPress={store.retry}>{words.storeAgain}</Button>
        </FieldRow>
      )}
    </div>
  );
}
