import { formatDiameter } from '../../piano/formatTorque.ts';
import { texts } from '../../ui/texts.ts';
import type { PinLoads } from './pinLoads.ts';
import styles from './torque.module.css';

const words = texts.torque.load;

/** On what the figures against the string rest, or why there are none. */
export function LoadNote({ loads, midis }: { readonly loads: PinLoads; readonly midis: readonly number[] }) {
  if (!loads.hasSchedule) return <p className={styles.text}>{words.noSchedule}</p>;
  const known = midis.filter((midi) => loads.of(midi).known).length;
  const diameter = formatDiameter(loads.pinDiameterMm);
  const sentences = [
    words.meaning,
    loads.isDiameterMeasured ? words.pinMeasured(diameter) : words.pinUsual(diameter),
    ...(known < midis.length ? [words.some(known, midis.length)] : []),
  ];
  return <p className={styles.text}>{sentences.join(' ')}</p>;
}
