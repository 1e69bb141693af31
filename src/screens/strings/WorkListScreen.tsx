import { useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { StringDecision } from '../../piano/stringingRecords.ts';
import type { Records } from '../../records/records.ts';
import type { WriteFailure } from '../../records/writeOutcome.ts';
import type { WorkGroup } from '../../stringing/decisions/workList.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { todayIso } from '../../ui/today.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { usePrintStyle } from '../../ui/usePrintStyle.ts';
import { WriteFault } from '../../ui/WriteFault.tsx';
import { workOutcomes } from './stringHistory.ts';
import type { BenchOfStrings, StringRecords } from './stringReadings.ts';
import { useBenchOfStrings, useStringRecords } from './useStrings.ts';
import styles from './WorkList.module.css';
import { WorkRow } from './WorkRow.tsx';
import { asksForWork, changesWireOrPin, progressOf, rowsOfGroup, workGroups } from './workGroups.ts';

const words = texts.strings.work;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

/** What is to be done, for the bench: on paper with boxes to tick, on the screen to be marked as done. */
export function WorkListScreen({ records, instrumentId }: Props) {
  usePrintStyle('12mm 14mm');
  const strings = useStringRecords(records, instrumentId);
  const bench = useBenchOfStrings(records, instrumentId);
  if (strings.state !== 'ready') return <ReadState observed={strings} />;
  if (!strings.value) return <NotFound />;
  if (bench.state !== 'ready') return <ReadState observed={bench} />;
  const { instrument } = strings.value;
  const groups = workGroups(bench.value.decisions);
  const stringsHref = routeToHref({ screen: 'strings', instrumentId });
  return (
    <>
      <PageHeading
        title={words.title}
        trail={[...instrumentTrail(instrument), { label: texts.strings.title, href: stringsHref }]}
        subtitle={words.subtitle(instrument.name)}
        isInvented={instrument.isDemonstration}
        actions={
          groups.length > 0 && (
            <Button look="primary" onPress={() => window.print()}>
              {words.print}
            </Button>
          )
        }
      />
      {groups.length === 0 ? (
        <EmptyState actions={<LinkButton href={stringsHref}>{words.back}</LinkButton>}>
          <p>{words.empty}</p>
        </EmptyState>
      ) : (
        <Groups records={records} strings={strings.value} bench={bench.value} groups={groups} />
      )}
    </>
  );
}

type GroupsProps = {
  readonly records: Records;
  readonly strings: StringRecords;
  readonly bench: BenchOfStrings;
  readonly groups: readonly WorkGroup[];
};

function Groups({ records, strings, bench, groups }: GroupsProps) {
  const [fault, setFault] = useState<WriteFailure | null>(null);
  const setDone = async (decision: StringDecision, doneOn: string | null) => {
    const outcome = await records.saveDecisions([{ ...decision, doneOn }]);
    setFault(outcome.written ? null : outcome);
  };
  const { done, all } = progressOf(groups);
  return (
    <>
      <p>{words.progress(done, all)}</p>
      <p className={styles.printed}>{words.printedOn(formatDate(todayIso()))}</p>
      <WriteFault fault={fault} />
      {groups.map((group) => (
        <section key={group.choice} className={styles.group}>
          <h2>{words.group(texts.strings.choices[group.choice], group.open.length + group.done.length)}</h2>
          <ul>
            {rowsOfGroup(group).map((decision) => (
              <WorkRow
                key={decision.id}
                decision={decision}
                asksForWork={asksForWork(decision.choice)}
                outcome={workOutcomes(strings.takes, bench, decision).find((one) => one.decision.id === decision.id)}
                onDone={(doneOn) => void setDone(decision, doneOn)}
              />
            ))}
          </ul>
          {changesWireOrPin(group.choice) && <p className={styles.hint}>{words.wireHint}</p>}
        </section>
      ))}
      <p className={styles.hint}>{texts.common.tension}</p>
    </>
  );
}
