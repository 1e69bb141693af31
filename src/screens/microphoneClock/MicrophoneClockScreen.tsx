import { useState } from 'react';
import type { ClockCalibration } from '../../piano/clock.ts';
import type { Records } from '../../records/records.ts';
import { Button } from '../../ui/Button.tsx';
import { FormPage } from '../../ui/FormPage.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { workshopTrail } from '../../ui/trails.ts';
import { useObserved } from '../../ui/useObserved.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { CalibrationTable } from './CalibrationTable.tsx';
import { CheckState } from './CheckState.tsx';
import { ReferenceFields } from './ReferenceFields.tsx';
import { newReferenceDraft, type ReferenceFaults, readReference } from './referenceDraft.ts';
import { useMicrophoneClock } from './useMicrophoneClock.ts';

const words = texts.clock;

/** A fork or a reference tone says how far the microphone's clock is off. */
export function MicrophoneClockScreen({ records }: { readonly records: Records }) {
  const [draft, setDraft] = useState(() => newReferenceDraft('tone'));
  const [faults, setFaults] = useState<ReferenceFaults>({});
  const { check, writeFault, listen, stop } = useMicrophoneClock(records);
  const earlier = useObserved<readonly ClockCalibration[]>('calibrations', (onValue, onFault) =>
    records.observe(() => records.calibrationsOf(), onValue, onFault),
  );
  const isListening = check.state === 'listening' || check.state === 'asking';
  const submit = () => {
    const read = readReference(draft);
    setFaults(read.isSound ? {} : read.faults);
    if (read.isSound) void listen(read.reference);
  };
  return (
    <>
      <PageHeading title={words.title} trail={workshopTrail()} />
      <FormPage faults={faults} onSubmit={submit}>
        <Section title={words.reference.title} note={words.reference.note}>
          <ReferenceFields draft={draft} faults={faults} onChange={setDraft} />
        </Section>
        <Section title={words.listen.title} note={words.listen.note}>
          <CheckState check={check} />
          <WriteFault fault={writeFault} />
          {/* Keys: a button that turned into the other while it is pressed would send the form. */}
          {isListening ? (
            <Button key="stop" isLarge onPress={stop}>
              {words.listen.stop}
            </Button>
          ) : (
            <Button key="listen" look="primary" isLarge isSubmit>
              {check.state === 'idle' ? words.listen.action : words.listen.again}
            </Button>
          )}
        </Section>
      </FormPage>
      {earlier.state === 'ready' && earlier.value.length > 0 && (
        <Section title={words.earlier.title}>
          <CalibrationTable calibrations={[...earlier.value].reverse()} />
        </Section>
      )}
    </>
  );
}
