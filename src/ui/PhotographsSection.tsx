import type { InstrumentId, VisitId } from '../piano/ids.ts';
import type { Photograph } from '../piano/photograph.ts';
import { LinkButton } from './Button.tsx';
import { routeToHref } from './routes.ts';
import { Section } from './Section.tsx';
import { texts } from './texts.ts';
import { useObserved } from './useObserved.ts';

/** As much of the records as counting needs. */
type PhotographSource = {
  photographsOf(instrumentId: InstrumentId): Promise<Photograph[]>;
  observe(
    query: () => Promise<number>,
    onValue: (count: number) => void,
    onError: (fault: unknown) => void,
  ): () => void;
};

type Props = {
  readonly records: PhotographSource;
  readonly instrumentId: InstrumentId;
  /** Of this visit alone, or of this note. */
  readonly visitId?: VisitId;
  readonly midi?: number;
};

/** The way to the photographs of an instrument, a visit or a note, and how many there are. */
export function PhotographsSection({ records, instrumentId, visitId, midi }: Props) {
  const count = useObserved<number>(`${instrumentId} ${visitId} ${midi}`, (onValue, onFault) =>
    records.observe(
      async () => (await records.photographsOf(instrumentId)).filter((found) => isOf(found, visitId, midi)).length,
      onValue,
      onFault,
    ),
  );
  const href = routeToHref({
    screen: 'photographs',
    instrumentId,
    ...(visitId !== undefined && { visitId }),
    ...(midi !== undefined && { midi }),
  });
  return (
    <Section title={texts.photographs.title}>
      <LinkButton href={href}>{texts.photographs.open(count.state === 'ready' ? count.value : 0)}</LinkButton>
    </Section>
  );
}

function isOf(photograph: Photograph, visitId: VisitId | undefined, midi: number | undefined): boolean {
  return (visitId === undefined || photograph.visitId === visitId) && (midi === undefined || photograph.midi === midi);
}
