import { type ClockCalibration, isOffsetTold } from '../../piano/clock.ts';
import { formatPpm, formatPpmAsCents } from '../../piano/formatClock.ts';
import { Notice } from '../../ui/Notice.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './microphoneClock.module.css';
import type { ClockCheck } from './useMicrophoneClock.ts';

const words = texts.clock;
/** The bar is full when the tone is measured. */
const ENOUGH_S = 16;

/** How the check stands, and what came of it. */
export function CheckState({ check }: { readonly check: ClockCheck }) {
  switch (check.state) {
    case 'idle':
      return null;
    case 'asking':
      return <p role="status">{words.listen.asking}</p>;
    case 'listening':
      return <Hearing heardS={check.heardS} />;
    case 'refused':
      return <Fault detail={check.detail}>{texts.recording.faults[check.reason]}</Fault>;
    case 'lost':
      return <Fault>{texts.recording.lost['microphone-ended']}</Fault>;
    case 'broken':
      return <Fault detail={check.detail}>{texts.recording.programFault}</Fault>;
    case 'not-measured':
      return <Fault>{words.listen.faults[check.reason]}</Fault>;
    case 'done':
      return <Result calibration={check.calibration} />;
  }
}

function Hearing({ heardS }: { readonly heardS: number }) {
  return (
    <div className={styles.state}>
      <p role="status">{heardS === 0 ? words.listen.waiting : words.listen.heard(heardS)}</p>
      <progress className={styles.bar} max={ENOUGH_S} value={heardS} aria-label={words.listen.progress} />
    </div>
  );
}

function Fault({ children, detail }: { readonly children: string; readonly detail?: string }) {
  return (
    <Notice kind="fault" word={texts.common.faultWord} isUrgent>
      {children} {detail}
    </Notice>
  );
}

function Result({ calibration }: { readonly calibration: ClockCalibration }) {
  const { offsetPpm, deviceLabel } = calibration;
  const { sentence, notTold, pitch, even, fast, slow, flat, sharp, kept, unnamed } = words.result;
  const isTold = isOffsetTold(calibration);
  const offset = formatPpm(calibration);
  const pace = offsetPpm >= 0 ? fast : slow;
  return (
    <div className={styles.state} role="status">
      <p className={styles.result}>{isTold ? sentence(offset, pace) : notTold(offset, pace)}</p>
      <p>
        {isTold ? pitch(formatPpmAsCents(offsetPpm), offsetPpm >= 0 ? flat : sharp) : even}{' '}
        {deviceLabel === '' ? unnamed : kept(deviceLabel)}
      </p>
    </div>
  );
}
