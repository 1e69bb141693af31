import { formatPitchStandard } from '../../piano/format.ts';
import { formatAddedPull, formatGrowth, formatPull } from '../../piano/formatStringing.ts';
import type { ScaleComparison } from '../../stringing/scale/compareScales.ts';
import { FactList } from '../../ui/FactList.tsx';
import { texts } from '../../ui/texts.ts';
import type { Strung } from './strung.ts';

const words = texts.stringing.compare.facts;

type Props = { readonly comparison: ScaleComparison; readonly before: Strung; readonly planned: Strung };

/** The totals over the notes that are known in both. */
export function ComparisonFacts({ comparison: { total }, before, planned }: Props) {
  if (!total) return null;
  const { beforeN, plannedN, growth, comparedNoteCount, leftOutNoteCount } = total;
  const label = ({ name, scale }: Strung) => `${words.before(name)} (${formatPitchStandard(scale.pitchStandardHz)})`;
  return (
    <FactList
      facts={[
        { label: label(before), value: formatPull(beforeN) },
        { label: label(planned), value: formatPull(plannedN) },
        { label: words.change, value: `${formatGrowth(growth)}, ${formatAddedPull(plannedN - beforeN)}` },
        { label: words.compared, value: words.ofAll(comparedNoteCount, comparedNoteCount + leftOutNoteCount) },
      ]}
    />
  );
}
