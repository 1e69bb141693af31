/** The long record for a colleague: every visit, every comparison, every chart and table, from the records and in the trade's words. */
import type { FullRecords } from './fullRecords.ts';
import { comparisonSection, courseOfRecord, responseSection } from './longRecordChanges.ts';
import { latestSection } from './longRecordReadings.ts';
import { slipSection, verdictRecord } from './longRecordVerdict.ts';
import { decisionSection, eventSection, torqueSection, trialSection, visitSection } from './longRecordVisits.ts';
import { ownerFacts, pageSubtitle } from './ownersInstrument.ts';
import { methodSentences } from './ownersMethod.ts';
import { OWNERS_FILE_CSS, OWNERS_PAGE_CSS } from './ownersPageCss.ts';
import { element, escapeText, type PageElement, treeToHtml } from './pageTree.ts';
import type { ReportWords } from './words.ts';

export const LONG_RECORD_CSS = `${OWNERS_PAGE_CSS}
.sheet figure + figure { margin-top: 2mm; }
.sheet th[scope="row"] { white-space: nowrap; }
.sheet .verdict + .scrolls { margin-top: 2mm; }
.sheet section > h2 { margin-top: 2mm; }
.sheet .scrolls + .scrolls { margin-top: 3mm; }
.sheet .scrolls { overflow-x: auto; }
@media print { .sheet .scrolls { overflow: visible; } .sheet table { font-size: 8pt; } }
`;

export function longRecordTree(records: FullRecords, words: ReportWords): PageElement {
  const { instrument } = records;
  const { subtitle, asOf } = pageSubtitle(records, words);
  const facts = [
    { label: words.instrument.pinBlock, value: instrument.pinBlock },
    { label: words.long.instrumentRemark, value: instrument.remark },
    ...ownerFacts(instrument, words),
  ].filter(({ value }) => value.trim() !== '');
  return element(
    'article',
    { class: 'sheet', lang: words.language },
    element(
      'header',
      {},
      element('p', { class: 'as-of' }, asOf),
      element('h1', {}, instrument.name),
      element('p', { class: 'subtitle' }, subtitle),
      facts.length > 0 &&
        element(
          'dl',
          {},
          facts.map(({ label, value }) => element('div', {}, element('dt', {}, label), element('dd', {}, value))),
        ),
    ),
    instrument.isDemonstration && element('p', { class: 'invented' }, words.demonstration),
    verdictRecord(records, words),
    courseOfRecord(records, words),
    visitSection(records, words),
    eventSection(records, words),
    slipSection(records, words),
    responseSection(records, words),
    comparisonSection(records, words),
    latestSection(records, words),
    torqueSection(records, words),
    trialSection(records, words),
    decisionSection(records, words),
    element(
      'section',
      { class: 'small' },
      element('h2', {}, words.method.title),
      ' ',
      element(
        'p',
        {},
        [...methodSentences(records, words), words.cautions.tension, words.cautions.judgement].join(' '),
      ),
    ),
  );
}

/** A whole file. */
export function longRecordFile(records: FullRecords, words: ReportWords): string {
  return `<!doctype html>
<html lang="${escapeText(words.language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<title>${escapeText(words.long.title(records.instrument.name))}</title>
<style>${LONG_RECORD_CSS}${OWNERS_FILE_CSS}</style>
</head>
<body>
${treeToHtml(longRecordTree(records, words))}
</body>
</html>
`;
}
