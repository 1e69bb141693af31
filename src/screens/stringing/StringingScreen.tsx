import type { InstrumentId } from '../../piano/ids.ts';
import { ownGrade, PUBLISHED_GRADES } from '../../piano/wireGrade.ts';
import type { Records } from '../../records/records.ts';
import { NotFound } from '../../ui/NotFound.tsx';
import { PageHeading } from '../../ui/PageHeading.tsx';
import { ReadState } from '../../ui/ReadState.tsx';
import { texts } from '../../ui/texts.ts';
import { instrumentTrail } from '../../ui/trails.ts';
import { GradesSection } from './GradesSection.tsx';
import { NoSchedule } from './NoSchedule.tsx';
import { ScheduleDesk } from './ScheduleDesk.tsx';
import { type StringingPage, useStringing } from './useStringing.ts';

const words = texts.stringing;

type Props = { readonly records: Records; readonly instrumentId: InstrumentId };

/** What is strung on an instrument, what it pulls, and what another wire would change. */
export function StringingScreen({ records, instrumentId }: Props) {
  const { page, shown, choose } = useStringing(records, instrumentId);
  if (page.state !== 'ready') return <ReadState observed={page} />;
  if (!page.value) return <NotFound />;
  const grades = [...page.value.ownGrades.map(ownGrade), ...PUBLISHED_GRADES];
  return (
    <>
      <Heading page={page.value} />
      {shown ? (
        <ScheduleDesk
          key={shown.id}
          records={records}
          page={page.value}
          stored={shown}
          grades={grades}
          onChoose={choose}
        />
      ) : (
        <NoSchedule records={records} instrument={page.value.instrument} onMade={choose} />
      )}
      <GradesSection records={records} ownGrades={page.value.ownGrades} />
    </>
  );
}

function Heading({ page: { instrument } }: { readonly page: StringingPage }) {
  return (
    <PageHeading
      title={words.title}
      trail={instrumentTrail(instrument)}
      subtitle={instrument.name}
      isInvented={instrument.isDemonstration}
    />
  );
}
