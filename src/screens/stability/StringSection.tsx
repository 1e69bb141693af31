import { NOT_MEASURED } from '../../piano/format.ts';
import { formatProbability, formatRate, formatResponse, formatSpeed } from '../../piano/formatStability.ts';
import type { Drift } from '../../stability/drift/analyseDrift.ts';
import { type StringAddress, stringHistory } from '../../stability/driftViews.ts';
import { fastestPossibleSlip } from '../../stability/nextEvidence.ts';
import { Button } from '../../ui/Button.tsx';
import { TimeFigure } from '../../ui/charts/TimeFigure.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FactList } from '../../ui/FactList.tsx';
import { SelectField } from '../../ui/Field.tsx';
import { Section } from '../../ui/Section.tsx';
import { texts } from '../../ui/texts.ts';
import styles from './stability.module.css';
import { stringChart, stringSheet } from './stringChart.ts';
import { byPlace, stringKey, stringNamer } from './stringNames.ts';

const words = texts.stability.string;

/** Where the tables lead to. */
export const STRING_SECTION = 'string-years';

type Props = {
  readonly drift: Drift;
  readonly chosen: StringAddress;
  readonly onChoose: (string: StringAddress) => void;
};

/** One string's years: what it did by itself, and the line of its slip. */
export function StringSection({ drift, chosen, onChoose }: Props) {
  const history = stringHistory(drift, chosen);
  const pin = drift.pins.find((one) => stringKey(one) === stringKey(chosen));
  const name = stringNamer(drift.pins)(chosen);
  return (
    <div id={STRING_SECTION}>
      <Section title={words.title} note={words.note}>
        <StringChoice strings={drift.detail.strings} chosen={chosen} onChoose={onChoose} />
        <FactList facts={factsOf(drift, chosen)} />
        {history ? (
          <TimeFigure
            name={words.name(name)}
            title={words.chartTitle(name)}
            charts={[stringChart(history, name, pin)]}
            sheet={() => stringSheet(history)}
          />
        ) : (
          <EmptyState>
            <p>{words.none(name)}</p>
          </EmptyState>
        )}
      </Section>
    </div>
  );
}

type ChoiceProps = {
  readonly strings: readonly StringAddress[];
  readonly chosen: StringAddress;
  readonly onChoose: (string: StringAddress) => void;
};

function StringChoice({ strings, chosen, onChoose }: ChoiceProps) {
  const inOrder = [...strings].sort(byPlace);
  const nameOf = stringNamer(strings);
  const index = inOrder.findIndex((one) => stringKey(one) === stringKey(chosen));
  const go = (target: number) => {
    const string = inOrder[target];
    if (string) onChoose({ midi: string.midi, stringPosition: string.stringPosition });
  };
  return (
    <div className={styles.stringChoice}>
      <SelectField
        id="chosen-string"
        label={words.choose}
        value={stringKey(chosen)}
        choices={inOrder.map((one) => ({ value: stringKey(one), label: nameOf(one) }))}
        onChange={(key) => go(inOrder.findIndex((one) => stringKey(one) === key))}
      />
      <Button label={words.previous} isDisabled={index <= 0} onPress={() => go(index - 1)}>
        ←
      </Button>
      <Button label={words.next} isDisabled={index >= inOrder.length - 1} onPress={() => go(index + 1)}>
        →
      </Button>
    </div>
  );
}

function factsOf({ pins, detail }: Drift, chosen: StringAddress) {
  const slip = pins.find((one) => stringKey(one) === stringKey(chosen))?.slip;
  const fastest = slip ? fastestPossibleSlip(slip) : null;
  const response = detail.strings.find((one) => stringKey(one) === stringKey(chosen));
  const facts = [
    { label: words.rate, value: formatRate(slip?.centsPerYear ?? null, slip?.standardUncertainty ?? null) },
    { label: words.probability, value: formatProbability(slip?.probability ?? null) },
    { label: words.possible, value: fastest === null ? NOT_MEASURED : words.fasterThan(formatSpeed(fastest)) },
  ];
  if (!response || !detail.isHumidityKnown) return facts;
  return [
    ...facts,
    { label: words.response, value: formatResponse(response.centsPerPct, response.standardUncertainty) },
  ];
}
