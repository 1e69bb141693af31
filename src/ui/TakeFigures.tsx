import {
  formatBeatRate,
  formatCents,
  formatHz,
  formatInharmonicity,
  formatLevel,
  formatPitchStandard,
  formatSeconds,
  formatSentence,
} from '../piano/format.ts';
import type { Beating, NoteReading, TakeQuality } from '../piano/reading.ts';
import { type Fact, FactList } from './FactList.tsx';
import { StateMark } from './StateMark.tsx';
import styles from './TakeFigures.module.css';
import { texts } from './texts.ts';

const words = texts.take;

/** What one take says about its note, in plain names. */
export function TakeFigures({ reading }: { readonly reading: NoteReading }) {
  const facts: Fact[] = [
    {
      label: `${words.pitch}, ${words.againstEqual(formatPitchStandard(reading.pitchStandardHz))}`,
      value: formatCents(reading.offsetCents, reading.offsetStandardUncertaintyCents),
    },
    {
      label: `${words.partial1}, ${words.partial1Source[reading.partial1Source]}`,
      value: formatHz(reading.partial1Hz, reading.partial1StandardUncertaintyHz),
    },
    { label: words.f0, value: formatHz(reading.f0Hz, reading.f0StandardUncertaintyHz) },
    {
      label: words.inharmonicity,
      value: formatInharmonicity(reading.inharmonicityB, reading.inharmonicityBStandardUncertainty),
    },
    { label: `${words.lifeTime}, ${words.lifeTimeHint}`, value: formatSeconds(reading.lifeTimeS) },
    { label: words.quality, value: <Quality quality={reading.quality} /> },
  ];
  if (reading.unisonStringsCents && reading.unisonStringsCents.length > 0)
    facts.push({
      label: words.unison,
      value: reading.unisonStringsCents.map((cents) => formatCents(cents)).join(', '),
    });
  return (
    <>
      <FactList facts={facts} />
      <BeatingLine beating={reading.beating} />
    </>
  );
}

function Quality({ quality }: { readonly quality: TakeQuality }) {
  const why = quality.faults.map((fault) => words.faults[fault]).join(', ');
  return (
    <>
      <StateMark state={quality.isUsable ? 'kept' : 'doubtful'} /> {quality.isUsable ? words.usable : words.notUsable}
      {why && `: ${why}`}; {words.snr(formatLevel(quality.snrDb))}
    </>
  );
}

function BeatingLine({ beating: { kind, rateHz, depthDb, partialNumbers, reason } }: { readonly beating: Beating }) {
  const figures = [
    rateHz === null ? null : formatBeatRate(rateHz),
    depthDb === null ? null : words.deep(formatLevel(depthDb)),
    partialNumbers.length === 0 ? null : words.onPartials(partialNumbers.join(', '), partialNumbers.length),
  ].filter((part) => part !== null);
  return (
    <p className={styles.beating}>
      <strong>
        {words.beating}: {words.beatKinds[kind]}
      </strong>
      {figures.length > 0 && `, ${figures.join(', ')}`}. {formatSentence(words.beatReason(reason))}
    </p>
  );
}
