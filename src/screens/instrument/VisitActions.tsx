import { formatDate } from '../../piano/format.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import { todayIso } from '../../ui/today.ts';
import { openVisit } from './openVisit.ts';
import type { InstrumentPage } from './useInstrument.ts';

const words = texts.instrument;

/** The likeliest next step stands out: the visit that is under way, else a new one. */
export function VisitActions({ page: { instrument, visits, surveys } }: { readonly page: InstrumentPage }) {
  const open = openVisit(visits, surveys, todayIso());
  return (
    <>
      {open && (
        <LinkButton look="primary" href={routeToHref({ screen: 'visit', visitId: open.id })}>
          {words.goOnVisit(formatDate(open.visitedOn))}
        </LinkButton>
      )}
      <LinkButton
        look={open ? 'plain' : 'primary'}
        href={routeToHref({ screen: 'new-visit', instrumentId: instrument.id })}
      >
        {words.newVisit}
      </LinkButton>
    </>
  );
}
