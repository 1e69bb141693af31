import { noteCount, notesOf } from '../../piano/compass.ts';
import { formatNotes, formatNumber } from '../../piano/format.ts';
import type { Instrument } from '../../piano/instrument.ts';
import { leastSampleCount, quickSample } from '../../survey/quickSample.ts';
import { FEWEST_PLAYED, sampleAnswer } from '../../survey/sampleAnswer.ts';
import { FieldFrame } from '../../ui/Field.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './scope.module.css';

const words = texts.visit.scope;

type Props = { readonly instrument: Instrument; readonly count: number; readonly onChange: (count: number) => void };

/** How many notes the sample has, which they are, and how sure its answer can be. */
export function SampleFields({ instrument, count, onChange }: Props) {
  const sample = quickSample(instrument, count);
  const all = noteCount(instrument.compass);
  return (
    <div className={styles.fields}>
      <FieldFrame id="sample-count" label={words.sampleCount}>
        <span className={styles.slider}>
          <input
            id="sample-count"
            type="range"
            min={leastSampleCount(instrument)}
            max={all}
            value={sample.length}
            aria-valuetext={words.sampleCountValue(sample.length, all)}
            onChange={(event) => onChange(Number(event.target.value))}
          />
          <output htmlFor="sample-count">{words.sampleCountValue(sample.length, all)}</output>
        </span>
      </FieldFrame>
      <p>
        {words.sampleNotes} {formatNotes(sample)}.
      </p>
      {sample.length >= FEWEST_PLAYED && <p>{answerText(sample, notesOf(instrument.compass))}</p>}
    </div>
  );
}

function answerText(sample: readonly number[], all: readonly number[]): string {
  const { uniformCents, zoneNoteCount, zoneCents } = sampleAnswer(sample, all);
  const uniform = words.answerUniform(formatNumber(uniformCents, 1));
  const hasZone = zoneNoteCount !== null && zoneCents !== null;
  const zone = hasZone ? `, ${words.answerZone(zoneNoteCount, formatNumber(zoneCents, 1))}` : '';
  const limit = sample.length < all.length ? ` ${words.answerLimit}` : '';
  return `${uniform}${zone}.${limit}`;
}
