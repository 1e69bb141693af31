import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './acrossInstruments.module.css';
import type { MissingStep } from './missingSteps.ts';

const words = texts.held.missing;

/** Instrument by instrument what is missing, each with the way to where it is entered. */
export function MissingSection({ steps }: { readonly steps: readonly MissingStep[] }) {
  return (
    <Section title={words.title} note={words.note}>
      {steps.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <ul className={styles.missing}>
          {steps.map(({ key, instrument, sentence, action, route }) => (
            <li key={key}>
              <a href={routeToHref({ screen: 'instrument', instrumentId: instrument.id })}>{instrument.name}</a>:{' '}
              {sentence} <a href={routeToHref(route)}>{action}</a>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
