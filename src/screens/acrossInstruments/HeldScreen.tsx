import { useMemo, useState } from 'react';
import { formatDate } from '../../piano/format.ts';
import type { Records } from '../../records/records.ts';
import { FEWEST_INSTRUMENTS, type HeldGroup } from '../../stability/acrossInstruments/heldGroups.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SpansFigure } from '../../ui/held/SpansFigure.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { workshopTrail } from '../../ui/trails.ts';
import styles from './acrossInstruments.module.css';
import { ChoiceFields } from './ChoiceFields.tsx';
import { GroupShare } from './GroupShare.tsx';
import { HeldTable } from './HeldTable.tsx';
import { type HeldChoices, type HeldView, heldView } from './heldView.ts';
import { groupWords, spanRow, workWords } from './heldWords.ts';
import { LookBackProgress } from './LookBackProgress.tsx';
import { type Held, useHeld } from './useHeld.ts';

const words = texts.held;

type OwnChoices = Omit<HeldChoices, 'whose'> & Partial<Pick<HeldChoices, 'whose'>>;

/** Which work on which blocks held, and for how long. */
export function HeldScreen({ records }: { readonly records: Records }) {
  const held = useHeld(records);
  const [chosen, setChosen] = useState<OwnChoices>({ alarm: 'watch', grouping: 'block' });
  const all = [...held.found.map(({ instrument }) => instrument), ...held.withoutWork];
  const hasOwn = all.some(({ isDemonstration }) => !isDemonstration);
  const hasInvented = all.some(({ isDemonstration }) => isDemonstration);
  const whose = chosen.whose ?? (hasOwn || !hasInvented ? 'own' : 'invented');
  const { alarm, grouping } = chosen;
  const view = useMemo(() => heldView(held.found, { alarm, grouping, whose }), [held.found, alarm, grouping, whose]);
  const withoutWork = held.withoutWork.filter(({ isDemonstration }) => isDemonstration === (whose === 'invented'));
  return (
    <>
      <PageHeading
        title={words.title}
        trail={workshopTrail()}
        subtitle={words.subtitle}
        isInvented={whose === 'invented'}
      />
      <LookBackProgress held={held} />
      {held.phase === 'finished' && held.jobCount === 0 ? (
        <EmptyState>
          <p>{all.length === 0 ? words.empty.instruments : words.empty.work}</p>
        </EmptyState>
      ) : (
        <>
          <Section title={words.table.result} note={words.progress.why}>
            <ChoiceFields
              choices={{ alarm, grouping, whose }}
              hasBoth={hasOwn && hasInvented}
              onChange={(change) => setChosen((before) => ({ ...before, ...change }))}
            />
            {view.jobs.length > 0 && (
              <>
                <SpansFigure rows={view.jobs.map(spanRow)} />
                <HeldTable jobs={view.jobs} />
              </>
            )}
          </Section>
          <Groups groups={view.groups} />
          <Unjudged held={held} view={view} withoutWork={withoutWork.map(({ name }) => name)} />
        </>
      )}
      <Section title={words.method.title}>
        <ul className={styles.lines}>
          {words.method.lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Section>
    </>
  );
}

/** A curve for each group with enough instruments; the others in one section that says why they have none. */
function Groups({ groups }: { readonly groups: readonly HeldGroup[] }) {
  const without = groups.filter(({ curve }) => curve === null);
  return (
    <>
      {groups.map((group) => {
        if (!group.curve) return null;
        const name = groupWords(group);
        return (
          <Section key={group.key} title={words.group.title(name, group.instrumentCount)}>
            <GroupShare group={group} name={name} curve={group.curve} />
          </Section>
        );
      })}
      {without.length > 0 && (
        <Section title={words.group.without}>
          <ul className={styles.lines}>
            {without.map((group) => (
              <li key={group.key}>
                {words.group.title(groupWords(group), group.instrumentCount)}. {whyNoRate(group)}
              </li>
            ))}
          </ul>
          <p className={styles.text}>{words.group.small}</p>
        </Section>
      )}
    </>
  );
}

function whyNoRate({ key, instrumentCount }: HeldGroup): string {
  if (key === '') return words.group.unknown;
  return instrumentCount < FEWEST_INSTRUMENTS ? words.group.few(FEWEST_INSTRUMENTS) : words.group.late;
}

type UnjudgedProps = { readonly held: Held; readonly view: HeldView; readonly withoutWork: readonly string[] };

function Unjudged({ held, view, withoutWork }: UnjudgedProps) {
  if (held.phase === 'working') return null;
  return (
    <Section title={words.unjudged.title} note={words.unjudged.note}>
      {view.unjudged.length === 0 && withoutWork.length === 0 && <p>{words.unjudged.none}</p>}
      <ul className={styles.lines}>
        {view.unjudged.map(({ found, visitCount }) => (
          <li key={`${found.instrument.id} ${found.job.doneOn} ${workWords(found.job)}`}>
            <a href={routeToHref({ screen: 'instrument', instrumentId: found.instrument.id })}>
              {found.instrument.name}
            </a>
            : {words.unjudged.line(workWords(found.job), formatDate(found.job.doneOn), visitCount)}
          </li>
        ))}
        {withoutWork.length > 0 && <li>{words.unjudged.noWork(withoutWork.join(', '))}</li>}
      </ul>
    </Section>
  );
}
