import { useEffect, useRef, useState } from 'react';
import type { ReferenceOutcome } from '../../analysis/tone/measureReference.ts';
import type { CaptureFaultReason } from '../../capture/captureFault.ts';
import { type Listening, startListening } from '../../capture/startListening.ts';
import { type ClockCalibration, type ClockReference, clockOffset, referenceFrequency } from '../../piano/clock.ts';
import type { CalibrationId } from '../../piano/ids.ts';
import { newId } from '../../records/newId.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import { openReference, type ReferenceDesk } from '../../workers/openReference.ts';

export type ClockCheck =
  | { readonly state: 'idle' | 'asking' }
  | { readonly state: 'listening'; readonly heardS: number }
  | { readonly state: 'refused'; readonly reason: CaptureFaultReason; readonly detail: string }
  | { readonly state: 'lost' }
  | { readonly state: 'broken'; readonly detail: string }
  | { readonly state: 'not-measured'; readonly reason: (ReferenceOutcome & { measured: false })['reason'] }
  | { readonly state: 'done'; readonly calibration: ClockCalibration };

export type MicrophoneClock = {
  readonly check: ClockCheck;
  readonly writeFault: WriteFailure | null;
  readonly listen: (reference: ClockReference) => Promise<void>;
  readonly stop: () => void;
};

type Session = { readonly desk: ReferenceDesk; listening: Listening | null };

/** Listens for the reference with the browser's microphone, and keeps what came of it. */
export function useMicrophoneClock(records: Records): MicrophoneClock {
  const [check, setCheck] = useState<ClockCheck>({ state: 'idle' });
  const [writeFault, setWriteFault] = useState<WriteFailure | null>(null);
  const session = useRef<Session | null>(null);

  const release = () => {
    const ending = session.current;
    session.current = null;
    void ending?.listening?.stop();
    ending?.desk.close();
  };
  const end = (last: ClockCheck) => {
    release();
    setCheck(last);
  };
  const keep = async (calibration: ClockCalibration) => {
    end({ state: 'done', calibration });
    const outcome = await records.saveCalibration(calibration);
    setWriteFault(outcome.written ? null : outcome);
  };
  const listen = async (reference: ClockReference) => {
    release();
    setCheck({ state: 'asking' });
    const onOutcome = (outcome: ReferenceOutcome) => {
      const device = session.current?.listening;
      if (!outcome.measured) end({ state: 'not-measured', reason: outcome.reason });
      else if (device) void keep(calibrationOf(reference, outcome, device));
    };
    const desk = openReference(referenceFrequency(reference).hz, {
      onHeard: (heardS) => session.current && setCheck({ state: 'listening', heardS }),
      onOutcome,
      onFailed: (detail) => end({ state: 'broken', detail }),
    });
    const own: Session = { desk, listening: null };
    session.current = own;
    const listening = await startListening({ sink: desk, onLost: () => end({ state: 'lost' }) });
    if (session.current !== own) return void (listening.started && listening.stop()); // given up meanwhile
    if (!listening.started) return end({ state: 'refused', reason: listening.reason, detail: listening.detail });
    own.listening = listening;
    setCheck({ state: 'listening', heardS: 0 });
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the screen closes
  useEffect(() => release, []);
  return { check, writeFault, listen, stop: () => end({ state: 'idle' }) };
}

function calibrationOf(
  reference: ClockReference,
  measured: ReferenceOutcome & { measured: true },
  { deviceLabel, sampleRateHz }: Listening,
): ClockCalibration {
  return {
    id: newId<CalibrationId>(),
    deviceLabel,
    sampleRateHz,
    measuredAt: new Date().toISOString(),
    reference,
    measuredHz: measured.hz,
    measuredStandardUncertaintyHz: measured.standardUncertaintyHz,
    ...clockOffset(referenceFrequency(reference), measured),
  };
}
