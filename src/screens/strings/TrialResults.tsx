import { formatBeatRate, formatDate, formatLevel } from '../../piano/format.ts';
import type { BridgeTrial } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import { ratioToDepthDb } from '../../stringing/falseBeats/beatStrength.ts';
import type { TrialResult } from '../../stringing/trials/compareTrial.ts';
import type { TrialConclusion } from '../../stringing/trials/concludeTrials.ts';
import type { PartialTrial } from '../../stringing/trials/partialTrial.ts';
import type { SideBeat } from '../../stringing/trials/sideBeat.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { DeleteButton } from '../../ui/DeleteButton.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './TrialResults.module.css';
import type { ConcludedTrials } from './trialTakes.ts';

const words = texts.strings.trials.results;

const COLUMNS: readonly Column<PartialTrial>[] = [
  { key: 'partial', title: words.partial, isRowHeader: true, cell: ({ partialNumber }) => partialNumber },
  { key: 'before', title: words.before, cell: ({ before }) => sideText(before) },
  { key: 'after', title: words.after, cell: ({ after }) => sideText(after) },
  { key: 'change', title: words.change, cell: ({ change }) => words.changes[change] },
];

type Props = { readonly records: Records; readonly concluded: ConcludedTrials | undefined };

/** What each trial changed, and what all of them together say. */
export function TrialResults({ records, concluded }: Props) {
  if (!concluded) return <p>{words.empty}</p>;
  const { trials, conclusion } = concluded;
  return (
    <>
      <p>
        <strong>{conclusionText(conclusion)}</strong>
      </p>
      <ol className={styles.trials}>
        {trials.map((trial, index) => {
          const result = conclusion.results[index];
          return result && <OneTrial key={trial.id} records={records} trial={trial} result={result} />;
        })}
      </ol>
    </>
  );
}

function conclusionText({ kind, named, results }: TrialConclusion): string {
  if (kind === 'no trial helps' && results.every(({ partials }) => partials.length === 0)) return words.nothingBeats;
  const tried = named ? texts.strings.trials.kinds[named.kind] : '';
  return words.conclusions[kind](tried);
}

type OneProps = { readonly records: Records; readonly trial: BridgeTrial; readonly result: TrialResult };

function OneTrial({ records, trial, result }: OneProps) {
  const kind = texts.strings.trials.kinds[trial.kind];
  const date = formatDate(trial.triedAt);
  return (
    <li>
      <h4>
        {kind}, {date} ({words.takes(trial.takesBefore.length, trial.takesAfter.length)})
      </h4>
      {trial.remark !== '' && <p>{trial.remark}</p>}
      <p>{resultText(result)}</p>
      {result.partials.length > 0 && (
        <DataTable
          caption={words.caption(kind)}
          isCaptionHidden
          columns={COLUMNS}
          rows={result.partials}
          rowKey={({ partialNumber }) => String(partialNumber)}
        />
      )}
      {result.cautions.length > 0 && (
        <ul className={styles.cautions}>
          {result.cautions.map((caution) => (
            <li key={caution}>△ {words.cautions[caution]}</li>
          ))}
        </ul>
      )}
      <DeleteButton
        records={records}
        target={{ table: 'trials' as const, id: trial.id }}
        message={words.removed(kind)}
        label={words.removeLabel(kind, date)}
      >
        {words.remove}
      </DeleteButton>
    </li>
  );
}

function resultText({ outcome, reason, finding }: TrialResult): string {
  const parts = [words.outcomes[outcome]];
  if (reason) parts.push(words.cannot[reason]);
  if (finding) parts.push(`${words.findings[finding]} (${texts.strings.practice}).`);
  return parts.join(' ');
}

function sideText({ rateHz, ratio }: SideBeat): string {
  if (rateHz === null) return words.noBeat;
  return texts.take.beatDepth(formatBeatRate(rateHz), formatLevel(ratioToDepthDb(ratio)));
}
