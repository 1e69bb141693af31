import { formatNumber, formatShare, formatYears } from '../../piano/format.ts';
import type { HeldGroup } from '../../stability/acrossInstruments/heldGroups.ts';
import type { ShareCurve, ShareStep } from '../../stability/acrossInstruments/productLimit.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { ShareFigure } from '../../ui/held/ShareFigure.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './acrossInstruments.module.css';
import { atRisk, sharePoints } from './heldView.ts';

const words = texts.held.share;

type Props = { readonly group: HeldGroup; readonly name: string; readonly curve: ShareCurve };

/** What share of a group still holds, where there are enough to say so. */
export function GroupShare({ group, name, curve }: Props) {
  const sentence = lastSentence(curve);
  const ends = curve.steps.filter(({ endedCount }) => endedCount > 0);
  return (
    <>
      <p className={styles.text}>
        {sentence} {curve.fromYears > 0 && words.from(formatYears(curve.fromYears))}{' '}
        {curve.earlierEndCount > 0 && words.earlier(curve.earlierEndCount)}
      </p>
      <ShareFigure
        name={words.name(name)}
        title={words.title(name)}
        summary={words.summary(name, sentence)}
        points={sharePoints(group)}
        atRisk={(years) => atRisk(group, years)}
      />
      {ends.length > 0 && (
        <DataTable caption={words.caption} columns={COLUMNS} rows={ends} rowKey={({ years }) => String(years)} />
      )}
    </>
  );
}

/** What can be said at the last time at which anybody was watched. */
function lastSentence({ steps }: ShareCurve): string {
  const last = steps.findLast(({ low }) => low > 0) ?? steps.at(-1);
  if (!last) return '';
  const years = formatYears(last.years);
  if (last.share === 1) return words.noneEnded(years, formatShare(last.low));
  const [share, uncertainty] = [formatShare(last.share), formatShare(last.shareU)];
  return words.sentence(years, share, uncertainty, formatShare(last.low), formatShare(last.high));
}

const COLUMNS: readonly Column<ShareStep>[] = [
  { key: 'years', title: words.years, isRowHeader: true, cell: ({ years }) => formatNumber(years, 1) },
  { key: 'atRisk', title: words.observed, isNumber: true, cell: ({ atRiskCount }) => atRiskCount },
  { key: 'ended', title: words.ended, isNumber: true, cell: ({ endedCount }) => endedCount },
  { key: 'share', title: words.holds, isNumber: true, cell: ({ share }) => formatShare(share) },
  { key: 'uncertainty', title: words.uncertainty, isNumber: true, cell: ({ shareU }) => formatShare(shareU) },
  {
    key: 'limits',
    title: words.limits,
    isNumber: true,
    cell: ({ low, high }) => words.limitsOf(formatShare(low), formatShare(high)),
  },
];
