import { Button, LinkButton } from '../../ui/Button.tsx';
import { routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import styles from './workshop.module.css';

const words = texts.workshop.empty;

/** An empty record: two ways to begin, neither better than the other. */
export function FirstSteps({ onLookAround }: { readonly onLookAround: () => void }) {
  return (
    <>
      <p className={styles.lead}>{words.what}</p>
      <div className={styles.offers}>
        <section className={styles.offer}>
          <h2>{words.tryTitle}</h2>
          <p>{words.tryWhat}</p>
          <Button look="primary" isLarge onPress={onLookAround}>
            {words.tryAction}
          </Button>
        </section>
        <section className={styles.offer}>
          <h2>{words.addTitle}</h2>
          <p>{words.addWhat}</p>
          <LinkButton look="primary" isLarge href={routeToHref({ screen: 'new-instrument' })}>
            {texts.workshop.add}
          </LinkButton>
        </section>
      </div>
    </>
  );
}
