/** The owner's page as a tree of elements, and as a file of its own: no script, nothing fetched from anywhere. */
import { formatDate, formatSigned } from '../piano/format.ts';
import { NARROW } from './courseLayout.ts';
import type { CourseSection } from './ownersCourse.ts';
import type { BeatSection } from './ownersFalseBeats.ts';
import type { Fact } from './ownersInstrument.ts';
import type { OwnersPage, Sentences } from './ownersPage.ts';
import { OWNERS_FILE_CSS, OWNERS_PAGE_CSS } from './ownersPageCss.ts';
import type { WorkSection } from './ownersWork.ts';
import { element, escapeText, type PageElement, treeToHtml } from './pageTree.ts';
import { pitchCourseSvg, rangeOfSteps } from './pitchCourseSvg.ts';
import type { ReportPhotograph } from './reportRecords.ts';
import type { ReportWords } from './words.ts';

/** A whole file. */
export function ownersPageFile(page: OwnersPage, words: ReportWords): string {
  return `<!doctype html>
<html lang="${escapeText(page.language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<meta name="color-scheme" content="light">
<title>${escapeText(page.title)}</title>
<style>${OWNERS_PAGE_CSS}${OWNERS_FILE_CSS}</style>
</head>
<body>
${treeToHtml(ownersPageTree(page, words))}
</body>
</html>
`;
}

/** What stands on the page, without its looks. */
export function ownersPageTree(page: OwnersPage, words: ReportWords): PageElement {
  const { advice, work, falseBeats, course, remark, photographs } = page;
  return element(
    'article',
    { class: 'sheet', lang: page.language },
    head(page),
    page.demonstration !== null && element('p', { class: 'invented' }, page.demonstration),
    verdict(page),
    course && courseTree(course, work, words),
    element(
      'div',
      { class: 'pair' },
      element('div', {}, advice && listSection(advice), work && workSection(work, words)),
      element('div', {}, falseBeats && beatSection(falseBeats, words), smallPrint(page.cautions)),
    ),
    remark && remarkSection(remark),
    photographs && photographSection(photographs, words),
    smallPrint(page.method),
  );
}

function head({ asOf, name, subtitle, facts }: OwnersPage): PageElement {
  return element(
    'header',
    {},
    element('p', { class: 'as-of' }, asOf),
    element('h1', {}, name),
    element('p', { class: 'subtitle' }, subtitle),
    facts.length > 0 && element('dl', {}, facts.map(factPair)),
  );
}

function factPair({ label, value }: Fact): PageElement {
  return element('div', {}, element('dt', {}, label), element('dd', {}, value));
}

function verdict({ verdict: { title, state, headline, sentences, newWire } }: OwnersPage): PageElement {
  const [first = '', ...rest] = sentences;
  return element(
    'section',
    { class: 'verdict', 'data-state': state },
    element('h2', {}, title),
    element('p', { class: 'headline' }, headline),
    element('p', {}, first),
    rest.length > 0 && element('p', {}, rest.join(' ')),
    newWire.length > 0 && element('p', {}, newWire.join(' ')),
  );
}

function listSection({ title, sentences }: Sentences): PageElement {
  const items = sentences.map((sentence) => element('li', {}, sentence));
  return element('section', {}, element('h2', {}, title), element('ul', {}, items));
}

function smallPrint({ title, sentences }: Sentences): PageElement {
  return element('section', { class: 'small' }, element('h2', {}, title), ' ', element('p', {}, sentences.join(' ')));
}

export function courseTree(section: CourseSection, work: WorkSection | null, words: ReportWords): PageElement {
  const { title, course, partName, sentences } = section;
  const picture = { course, partName, events: work?.marks ?? [], summary: summaryOf(course.steps, words) };
  return element(
    'section',
    {},
    element('h2', {}, title),
    course.steps.length > 0 &&
      element('figure', {}, pitchCourseSvg(picture, words), pitchCourseSvg(picture, words, NARROW)),
    element('p', { class: 'explained' }, sentences.join(' ')),
  );
}

function summaryOf(steps: CourseSection['course']['steps'], words: ReportWords): string {
  const { lowCents, highCents } = rangeOfSteps(steps);
  const date = (text = '') => formatDate(text, words.language);
  const cents = (value: number) => `${formatSigned(value, 1)} ${words.course.cents}`;
  const { chartSummary } = words.course;
  return chartSummary(
    steps.length,
    date(steps[0]?.fromDate),
    date(steps.at(-1)?.toDate),
    cents(lowCents),
    cents(highCents),
  );
}

function beatSection({ title, explanation, rows, sentences }: BeatSection, { falseBeats }: ReportWords): PageElement {
  const number = { class: 'number' };
  const headings = element(
    'tr',
    {},
    element('th', { scope: 'col' }, falseBeats.when),
    element('th', { scope: 'col', ...number }, falseBeats.count),
    element('th', { scope: 'col', ...number }, falseBeats.judged),
  );
  const lines = rows.map(({ when, withFalseBeat, judged }) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, when),
      element('td', number, withFalseBeat),
      element('td', number, judged),
    ),
  );
  return element(
    'section',
    {},
    element('h2', {}, title),
    element('p', {}, explanation),
    rows.length > 0 && element('table', {}, element('thead', {}, headings), element('tbody', {}, lines)),
    element('p', {}, sentences.join(' ')),
  );
}

function workSection({ title, rows, nothing }: WorkSection, { work }: ReportWords): PageElement {
  const lines = rows.map(({ date, what, where, remark }) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row', class: 'date' }, date),
      element(
        'td',
        {},
        `${what}, ${where}`,
        remark !== '' && [element('br', {}), element('span', { class: 'noted' }, `${work.remark}: ${remark}`)],
      ),
    ),
  );
  return element(
    'section',
    {},
    element('h2', {}, title),
    rows.length > 0 && element('table', {}, element('tbody', {}, lines)),
    nothing !== null && element('p', {}, nothing),
  );
}

function remarkSection({ title, text, note }: NonNullable<OwnersPage['remark']>): PageElement {
  return element(
    'section',
    { class: 'remark' },
    element('h2', {}, title),
    element('blockquote', {}, text),
    element('p', {}, note),
  );
}

function photographSection(
  { title, pictures }: NonNullable<OwnersPage['photographs']>,
  words: ReportWords,
): PageElement {
  const figures = pictures.map((picture) => photograph(picture, words));
  return element('section', {}, element('h2', {}, title), element('div', { class: 'pictures' }, figures));
}

function photograph(
  { dataUri, caption, takenAt, widthPx, heightPx }: ReportPhotograph,
  words: ReportWords,
): PageElement {
  const date = takenAt === null ? '' : formatDate(takenAt, words.language);
  const alt = caption === '' ? words.photographs.uncaptioned : caption;
  const text = [caption, date].filter((part) => part !== '').join(' · ');
  return element(
    'figure',
    {},
    element('img', { src: dataUri, width: widthPx, height: heightPx, alt }),
    element('figcaption', {}, text),
  );
}
