import { useMemo, useState } from 'react';
import type { Instrument } from '../../piano/instrument.ts';
import type { Records } from '../../records/records.ts';
import { FEWEST_INSTRUMENTS, type HeldGroup } from '../../stability/acrossInstruments/heldGroups.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { SpansFigure } from '../../ui/held/SpansFigure.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { workshopTrail } from '../../ui/trails.ts';
import { useObserved } from '../../ui/useObserved.ts';
import styles from './acrossInstruments.module.css';
import { ChoiceFields } from './ChoiceFields.tsx';
import { GroupShare } from './GroupShare.tsx';
import { HeldTable } from './HeldTable.tsx';
import { type HeldChoices, heldView } from './heldView.ts';
import { groupWords, spanRow } from './heldWords.ts';
import { LookBackProgress } from './LookBackProgress.tsx';
import { MissingSection } from './MissingSection.tsx';
import { missingSteps } from './missingSteps.ts';
import { useHeld } from './useHeld.ts';

const words = texts.held;

type OwnChoices = Omit<HeldChoices, 'whose'> & Partial<Pick<HeldChoices, 'whose'>>;

/** Which work on which blocks held, and for how long. */
export function HeldScreen({ records }: { readonly records: Records }) {
  const instruments = useObserved<Instrument[]>('held', (onValue, onFault) =>
    records.observe(() => records.listInstruments(), onValue, onFault),
  );
  if (instruments.state === 'loading')
    return (
      <>
        <PageHeading title={words.title} trail={workshopTrail()} subtitle={words.subtitle} />
        <ReadState observed={instruments} />
      </>
    );
  return <LookBack records={records} instruments={instruments.state === 'ready' ? instruments.value : []} />;
}

type LookBackProps = { readonly records: Records; readonly instruments: readonly Instrument[] };

function LookBack({ records, instruments }: LookBackProps) {
  const held = useHeld(records);
  const [chosen, setChosen] = useState<OwnChoices>({ alarm: 'watch', grouping: 'block' });
  const hasOwn = instruments.some(({ isDemonstration }) => !isDemonstration);
  const hasInvented = instruments.some(({ isDemonstration }) => isDemonstration);
  const whose = chosen.whose ?? (hasOwn || !hasInvented ? 'own' : 'invented');
  const { alarm, grouping } = chosen;
  const view = useMemo(() => heldView(held.found, { alarm, grouping, whose }), [held.found, alarm, grouping, whose]);
  const withoutWork = held.withoutWork.filter(({ isDemonstration }) => isDemonstration === (whose === 'invented'));
  const hasWork = view.jobs.length + view.unjudged.length > 0;
  return (
    <>
      <PageHeading
        title={words.title}
        trail={workshopTrail()}
        subtitle={words.subtitle}
        isInvented={whose === 'invented'}
      />
      <LookBackProgress held={held} />
      {held.phase === 'finished' && instruments.length === 0 ? (
        <NoInstrument />
      ) : (
        <>
          <Section title={words.table.result} note={words.progress.why}>
            <div className={styles.result} data-working={held.phase === 'working'}>
              {(view.jobs.length > 0 || held.phase !== 'finished' || (hasOwn && hasInvented)) && (
                <ChoiceFields
                  choices={{ alarm, grouping, whose }}
                  hasBoth={hasOwn && hasInvented}
                  onChange={(change) => setChosen((before) => ({ ...before, ...change }))}
                />
              )}
              {view.jobs.length > 0 ? (
                <>
                  <SpansFigure rows={view.jobs.map(spanRow)} />
                  <HeldTable jobs={view.jobs} />
                </>
              ) : (
                held.phase === 'finished' && (
                  <EmptyState>
                    <p>{hasWork ? words.empty.unjudged : words.empty.work}</p>
                  </EmptyState>
                )
              )}
            </div>
          </Section>
          <Groups groups={view.groups} />
          {held.phase === 'finished' && <MissingSection steps={missingSteps(view, withoutWork)} />}
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

function NoInstrument() {
  return (
    <Section title={words.table.result}>
      <EmptyState
        actions={
          <LinkButton look="primary" href={routeToHref({ screen: 'new-instrument' })}>
            {texts.workshop.add}
          </LinkButton>
        }
      >
        <p>{words.empty.instruments}</p>
      </EmptyState>
    </Section>
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
