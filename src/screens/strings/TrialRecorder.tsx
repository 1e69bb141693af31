import { useEffect, useState } from 'react';
import { SourceNotice } from '../../listening/SourceNotice.tsx';
import { formatDate } from '../../piano/format.ts';
import type { TrialKind } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { ChoiceField } from '../../ui/ChoiceField.tsx';
import { TextField } from '../../ui/Field.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { LevelBar } from '../../ui/LevelBar.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import type { BenchPlan } from './benchSurvey.ts';
import type { StringPlace } from './stringKey.ts';
import type { StringRecords } from './stringReadings.ts';
import styles from './TrialRecorder.module.css';
import { sideBefore, type TrialSide } from './trialSides.ts';
import { useBenchSurvey } from './useBenchSurvey.ts';
import { type TrialRecorder as Recorder, useTrialRecorder } from './useTrialRecorder.ts';

const words = texts.strings.trials.record;

export const TRIAL_KINDS: readonly TrialKind[] = [
  'hold the bridge pin',
  'press the wire at the bridge',
  'tap the wire to the bridge',
  'seat the wire at the other end',
  'take out its twist',
  'other',
];

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
          word={texts.recording.level[microphone.level.zone]}
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

function SideList({ sides }: { readonly sides: readonly TrialSide[] }) {
  return (
    <ol className={styles.sides}>
      {sides.map((side, index) => {
        const before = sideBefore(sides, index);
        return (
          <li key={side.trialId ?? 'before'} aria-current={index === sides.length - 1 ? 'step' : undefined}>
            <strong>{sideName(side)}</strong>: {words.takes(side.takeIds.length)}
            {side.faultyCount > 0 && `, ${words.faulty(side.faultyCount)}`}
            {side.kind && before && `, ${words.against(sideName(before))}`}
          </li>
        );
      })}
    </ol>
  );
}

function sideName({ kind }: TrialSide): string {
  return kind === null ? words.before : words.after(texts.strings.trials.kinds[kind]);
}

function NextSide({ recorder }: { readonly recorder: Recorder }) {
  const [kind, setKind] = useState<TrialKind>('hold the bridge pin');
  const [remark, setRemark] = useState('');
  const hasTake = recorder.sides.at(-1)?.takeIds.length !== 0;
  return (
    <>
      <ChoiceField
        name="trial-kind"
        label={words.next}
        value={kind}
        choices={TRIAL_KINDS.map((value) => ({ value, label: texts.strings.trials.kinds[value] }))}
        onChange={setKind}
      />
      <p className={styles.text}>{texts.strings.trials.how[kind]}</p>
      <TextField id="trial-remark" label={words.remark} value={remark} onChange={setRemark} />
      <FieldRow>
        <Button
          look="primary"
          isDisabled={!hasTake}
          onPress={() => {
            recorder.nextSide(kind, remark.trim());
            setRemark('');
          }}
        >
          {words.doIt}
        </Button>
        <Button onPress={() => void recorder.end()}>{words.end}</Button>
      </FieldRow>
      {!hasTake && <p className={styles.text}>{words.needsTake}</p>}
    </>
  );
}
