import type { InstrumentId } from '../../piano/ids.ts';
import { type Route, routeToHref } from '../../ui/routes.ts';
import { texts } from '../../ui/texts.ts';
import styles from './instrument.module.css';

const words = texts.instrument.pages;

type Page = { readonly label: string; readonly route: Route };

/** The further pages of an instrument, by what one wants to do. Its stability has a line of its own. */
export function PagesOfInstrument({ instrumentId }: { readonly instrumentId: InstrumentId }) {
  const groups: readonly { readonly title: string; readonly pages: readonly Page[] }[] = [
    {
      title: words.show,
      pages: [
        { label: texts.report.link, route: { screen: 'owners-page', instrumentId } },
        { label: texts.longRecord.link, route: { screen: 'long-record', instrumentId } },
        { label: texts.hearing.link, route: { screen: 'hearing', instrumentId } },
      ],
    },
    {
      title: words.bench,
      pages: [
        { label: texts.strings.link, route: { screen: 'strings', instrumentId } },
        { label: texts.stringing.link, route: { screen: 'stringing', instrumentId } },
        { label: texts.torque.open, route: { screen: 'instrument-torque', instrumentId } },
      ],
    },
    {
      title: words.record,
      pages: [
        { label: texts.instrument.edit, route: { screen: 'edit-instrument', instrumentId } },
        { label: words.photographs, route: { screen: 'photographs', instrumentId } },
      ],
    },
  ];
  return (
    <nav className={styles.pages} aria-label={words.label}>
      {groups.map(({ title, pages }) => (
        <div key={title} className={styles.pageGroup}>
          <p className={styles.pageTitle}>{title}</p>
          <ul className={styles.pageLinks}>
            {pages.map(({ label, route }) => (
              <li key={label}>
                <a href={routeToHref(route)}>{label}</a>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </nav>
  );
}
