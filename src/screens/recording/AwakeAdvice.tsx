import type { AwakeState } from '../../capture/keepScreenAwake.ts';
import { texts } from '../../ui/texts.ts';
import styles from './recording.module.css';

type Props = { readonly isListening: boolean; readonly awake: AwakeState };

/** One line where the screen may go dark while nobody touches it. */
export function AwakeAdvice({ isListening, awake }: Props) {
  const mayDarken = awake === 'refused' || awake === 'not-supported';
  return isListening && mayDarken ? <p className={styles.label}>{texts.recording.screenMayDarken}</p> : null;
}
