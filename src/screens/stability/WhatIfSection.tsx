import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Notice } from '../../ui/Notice.tsx';
import styles from '../../ui/running.module.css';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { TRIAL_COUNT, useWhatIf } from './useWhatIf.ts';
import { WhatIfFields } from './WhatIfFields.tsx';
import { WhatIfResult } from './WhatIfResult.tsx';
import { FIRST_DRAFT, questionOf } from './whatIfDraft.ts';

const words = texts.stability.whatIf;

/** What a fault would look like, and when it would be found: invented pianos, judged like real ones. */
export function WhatIfSection({ thresholdCentsPerYear }: { readonly thresholdCentsPerYear: number }) {
  const [draft, setDraft] = useState(FIRST_DRAFT);
  const [asked, setAsked] = useState(FIRST_DRAFT);
  const { isRunning, doneCount, summary, fault, start, stop } = useWhatIf();
  const begin = () => {
    setAsked(draft);
    start(questionOf(draft, thresholdCentsPerYear));
  };
  return (
    <Section title={words.title} note={words.note}>
      <WhatIfFields draft={draft} onChange={(change) => setDraft((before) => ({ ...before, ...change }))} />
      <div className={styles.running}>
        {isRunning ? (
          <>
            <progress className={styles.progress} max={TRIAL_COUNT} value={doneCount} aria-label={words.title} />
            <span role="status">{words.progress(doneCount, TRIAL_COUNT)}</span>
            <Button onPress={stop}>{words.stop}</Button>
          </>
        ) : (
          <Button look="primary" onPress={begin}>
            {words.start}
          </Button>
        )}
      </div>
      {fault && (
        <Notice kind="fault" word={texts.common.faultWord} isUrgent>
          {words.failed(fault)}
        </Notice>
      )}
      {summary && <WhatIfResult summary={summary} fault={asked.fault} />}
    </Section>
  );
}
