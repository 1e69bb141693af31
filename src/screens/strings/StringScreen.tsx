import { useMemo } from 'react';
import { isInCompass } from '../../piano/compass.ts';
import type { InstrumentId } from '../../piano/ids.ts';
import type { Records } from '../../records/records.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { Disclosure } from '../../ui/Disclosure.tsx';
import { NotFound } from '../../ui/NotFound.tsx';
import { Notice } from '../../ui/Notice.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { heardString } from './audibility.ts';
import { DecisionSection } from './DecisionSection.tsx';
import { decisionByString, suggestionOf } from './deskRows.ts';
import { HeardSection } from './HeardSection.tsx';
import { HistorySection } from './HistorySection.tsx';
import { stringHistory, workOutcomes } from './stringHistory.ts';
import { fromTheLowest, hrefOf, isSameString, keyOf, nameOf, type StringPlace } from './stringKey.ts';
import { type BenchOfStrings, chosenTakes, type StringRecords, takesOfString } from './stringReadings.ts';
import { TrialFromTakes } from './TrialFromTakes.tsx';
import { TrialRecorder } from './TrialRecorder.tsx';
import { TrialResults } from './TrialResults.tsx';
import { concludedTrials, standingTrials } from './trialTakes.ts';
import { useBenchOfStrings, useStringRecords } from './useStrings.ts';

const words = texts.strings;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId; readonly place: StringPlace };

export function StringScreen({ records, instrumentId, place }: Props) {
  const strings = useStringRecords(records, instrumentId);
  const bench = useBenchOfStrings(records, instrumentId);
  if (strings.state !== 'ready') return <ReadState observed={strings} />;
  if (!strings.value || !isInCompass(strings.value.instrument.compass, place.midi)) return <NotFound />;
  if (bench.state !== 'ready') return <ReadState observed={bench} />;
  return <OneString records={records} strings={strings.value} bench={bench.value} place={place} />;
}

type OneProps = {
  readonly records: Records;
  readonly strings: StringRecords;
  readonly bench: BenchOfStrings;
  readonly place: StringPlace;
};

function OneString({ records, strings, bench, place }: OneProps) {
  const { instrument } = strings;
  const takes = useMemo(() => takesOfString(strings.takes, place), [strings, place]);
  const concluded = useMemo(
    () =>
      concludedTrials(
        bench.trials.filter((trial) => isSameString(trial, place)),
        strings.takes,
      ).get(keyOf(place)),
    [bench, strings, place],
  );
  const newest = takes.findLast(({ take }) => take.isKept);
  const standing = useMemo(
    () => concludedTrials(standingTrials(bench.trials, bench.decisions, place), strings.takes).get(keyOf(place)),
    [bench, strings, place],
  );
  const suggestion = suggestionOf(
    heardString(newest?.take.reading),
    standing?.conclusion,
    strings.failingPins.has(keyOf(place)),
  );
  const decision = decisionByString(bench.decisions).get(keyOf(place)) ?? null;
  return (
    <>
      <StringHeading strings={strings} place={place} />
      <HeardSection records={records} takes={takes} withSound={strings.withSound} />
      <Section title={words.trials.title} note={words.trials.note}>
        <Notice kind="caution" word={texts.common.cautionWord}>
          {words.trials.caution}
        </Notice>
        <h3>{words.trials.record.title}</h3>
        <TrialRecorder records={records} strings={strings} place={place} />
        <Disclosure summary={words.trials.choose.title}>
          <TrialFromTakes records={records} place={place} takes={takes} />
        </Disclosure>
        <h3>{words.trials.results.title}</h3>
        <TrialResults records={records} concluded={concluded} />
      </Section>
      <DecisionSection
        key={`${decision?.id ?? ''} ${suggestion.reasons.join()}`}
        records={records}
        instrumentId={instrument.id}
        place={place}
        suggestion={suggestion}
        decision={decision}
      />
      <HistorySection
        rows={stringHistory(strings, bench, place)}
        outcomes={workOutcomes(strings.takes, bench, place)}
      />
    </>
  );
}

function StringHeading({ strings: { instrument, takes }, place }: Pick<OneProps, 'strings' | 'place'>) {
  const places = chosenTakes(takes, 'newest').map(({ take }) => take);
  const before = places.findLast((other) => fromTheLowest(other, place) < 0);
  const after = places.find((other) => fromTheLowest(other, place) > 0);
  const { id: instrumentId } = instrument;
  return (
    <PageHeading
      title={nameOf(place)}
      trail={[
        ...instrumentTrail(instrument),
        { label: words.string.trail, href: routeToHref({ screen: 'strings', instrumentId }) },
      ]}
      isInvented={instrument.isDemonstration}
      actions={
        <>
          {before && (
            <LinkButton href={hrefOf(instrumentId, before)}>
              {words.string.neighbours.before(nameOf(before))}
            </LinkButton>
          )}
          {after && (
            <LinkButton href={hrefOf(instrumentId, after)}>{words.string.neighbours.after(nameOf(after))}</LinkButton>
          )}
        </>
      }
    />
  );
}
