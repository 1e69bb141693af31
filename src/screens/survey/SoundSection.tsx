import { formatSize } from '../../piano/formatSize.ts';
import type { Take } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import type { SoundSizes } from '../../records/takeSounds.ts';
import { Button } from '../../ui/Button.tsx';
import { FieldRow } from '../../ui/FormPage.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { againSentences } from './againSentences.ts';
import styles from './SoundSection.module.css';
import { type MeasureAgain, useMeasureAgain } from './useMeasureAgain.ts';

const words = texts.sound;

type Props = { readonly records: Records; readonly takes: readonly Take[]; readonly sizes: SoundSizes };

/** How much sound the survey keeps, and measuring all of it again. */
export function SoundSection({ records, takes, sizes }: Props) {
  const again = useMeasureAgain(records);
  const { takeIds, byteCount } = sizes;
  const withSound = takes.filter((take) => takeIds.includes(take.id));
  if (withSound.length === 0)
    return (
      <Section title={words.title}>
        <p>{words.survey.none}</p>
      </Section>
    );
  return (
    <Section title={words.title}>
      <p>{words.survey.size(formatSize(byteCount), withSound.length)}</p>
      {again.state.phase === 'running' ? (
        <Running again={again} />
      ) : (
        <FieldRow>
          <Button onPress={() => void again.run(withSound)}>{words.again.action}</Button>
        </FieldRow>
      )}
      <Outcome state={again.state} />
    </Section>
  );
}

function Running({ again: { state, stop } }: { readonly again: MeasureAgain }) {
  if (state.phase !== 'running') return null;
  const { triedCount, allCount } = state;
  return (
    <div className={styles.running}>
      <p>{words.again.progress(triedCount, allCount)}</p>
      <progress className={styles.bar} max={allCount} value={triedCount} aria-label={words.again.progressLabel} />
      <Button onPress={stop}>{words.again.cancel}</Button>
    </div>
  );
}

function Outcome({ state }: { readonly state: MeasureAgain['state'] }) {
  const isOver = state.phase === 'done' || state.phase === 'stopped';
  return (
    <>
      <p role="status">{isOver && againSentences(state.summary, state.phase === 'stopped').join(' ')}</p>
      <WriteFault fault={isOver ? state.summary.writeFault : null} />
    </>
  );
}
