import { useState } from 'react';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import type { StringAddress } from '../../stability/driftViews.ts';
import { slipThresholdOf } from '../../stability/slipThreshold.ts';
import { dueLimit } from '../../ui/dueLimit.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { PageParts } from '../../ui/PageParts.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { ForecastSection } from './ForecastSection.tsx';
import { HumiditySection } from './HumiditySection.tsx';
import { LifeLineSection } from './LifeLineSection.tsx';
import { MapSection } from './MapSection.tsx';
import { PinSection } from './PinSection.tsx';
import { pinsInOrder } from './pinRows.ts';
import { SpanSection } from './SpanSection.tsx';
import { StringSection } from './StringSection.tsx';
import { TorqueSection } from './TorqueSection.tsx';
import type { StabilityPage } from './useStability.ts';
import { VerdictSection } from './VerdictSection.tsx';
import { WhatIfSection } from './WhatIfSection.tsx';

const words = texts.stability;

type Props = {
  readonly page: StabilityPage;
  readonly drift: Drift;
  readonly onThreshold: (centsPerYear: number) => void;
};

/** Everything that the judgement says, the verdict first. */
export function JudgedSections({ page, drift, onThreshold }: Props) {
  const { history, events } = page;
  const threshold = slipThresholdOf(page.instrument);
  const [limit, setLimit] = useState(dueLimit.read);
  return (
    <PageParts>
      <VerdictSection drift={drift} threshold={threshold} onThreshold={onThreshold} history={history} />
      <LifeLineSection history={history} drift={drift} events={events} />
      {drift.detail.changes.length === 0 ? (
        <Section title={words.span.title}>
          <EmptyState>
            <p>{words.empty.noInterval}</p>
          </EmptyState>
        </Section>
      ) : (
        <StringSections page={page} drift={drift} />
      )}
      <ForecastSection
        history={history}
        drift={drift}
        limit={limit}
        onLimit={(chosen) => {
          dueLimit.write(chosen);
          setLimit(chosen);
        }}
      />
      <WhatIfSection thresholdCentsPerYear={threshold} />
    </PageParts>
  );
}

/**
 * What needs at least one change of a string. One string is chosen for all of it: the surest suspect until another is. Sections that do not
 * show the chosen one are not drawn anew with it: walking along the compass by keyboard must keep pace.
 */
function StringSections({
  page: { instrument, torques },
  drift,
}: {
  readonly page: StabilityPage;
  readonly drift: Drift;
}) {
  const [wanted, setChosen] = useState<StringAddress | null>(null);
  const chosen = wanted ?? pinsInOrder(drift.pins)[0] ?? null;
  return (
    <>
      <MapSection instrument={instrument} drift={drift} chosen={chosen} onChoose={setChosen} />
      {chosen && <StringSection drift={drift} chosen={chosen} onChoose={setChosen} />}
      <PinSection drift={drift} onChoose={setChosen} />
      <TorqueSection instrument={instrument} pins={drift.pins} torques={torques} />
      <SpanSection instrument={instrument} drift={drift} />
      <HumiditySection instrument={instrument} drift={drift} />
    </>
  );
}
