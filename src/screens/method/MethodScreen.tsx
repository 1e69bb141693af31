import { PageHeading } from '../../ui/PageHeading.tsx';
import { PageParts } from '../../ui/PageParts.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import { workshopTrail } from '../../ui/trails.ts';
import { BeatSection } from './BeatSection.tsx';
import { CertaintySection } from './CertaintySection.tsx';
import styles from './method.module.css';
import { NoteSection } from './NoteSection.tsx';
import { YearSection } from './YearSection.tsx';

const words = texts.method;

/** What stands behind the figures, in pictures that are worked out while they are looked at. */
export function MethodScreen() {
  return (
    <>
      <PageHeading title={words.title} trail={workshopTrail()} subtitle={words.subtitle} />
      <PageParts>
        <NoteSection />
        <BeatSection />
        <YearSection />
        <CertaintySection />
        <Section title={words.limits.title}>
          <p className={styles.text}>{words.limits.clock}</p>
          <p>
            <a href={routeToHref({ screen: 'microphone-clock' })}>{words.limits.clockLink}</a>
          </p>
          <p className={styles.text}>{words.limits.hygrometer}</p>
          <p className={styles.text}>{words.limits.evidence}</p>
        </Section>
      </PageParts>
    </>
  );
}
