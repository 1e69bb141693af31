/** Each string as it was last read: pitch, inharmonicity, life, beats. */
import { formatBeatRate, formatCents, formatInharmonicity, formatSeconds, NOT_MEASURED } from '../piano/format.ts';
import type { Take } from '../piano/instrument.ts';
import type { FullRecords } from './fullRecords.ts';
import { type ChartedString, noteChartSvg } from './noteChartSvg.ts';
import { element, type PageElement } from './pageTree.ts';
import { type ReportColumn, scrollingTable } from './reportTable.ts';
import { stringName } from './stringWords.ts';
import type { ReportWords } from './words.ts';

type LatestReading = { readonly take: Take; readonly visitedOn: string };

export function latestSection(records: FullRecords, words: ReportWords): PageElement | null {
  const latest = latestReadings(records);
  if (latest.length === 0) return null;
  const { long } = words;
  const row = records.instrument;
  const stiffness = latest.flatMap(({ take }) => stiffnessOf(take));
  const lives = latest.flatMap(({ take }) => lifeOf(take));
  return element(
    'section',
    {},
    element('h2', {}, long.latest),
    stiffness.length > 0 &&
      element('figure', {}, noteChartSvg({ title: long.inharmonicityChart, strings: stiffness, row, isLog: true })),
    lives.length > 0 &&
      element('figure', {}, noteChartSvg({ title: long.lifeChart, strings: lives, row, isLog: true })),
    scrollingTable(long.latestTable, columnsOf(words), latest),
  );
}

/** Kept and usable, the newest of each string, from the lowest up. */
function latestReadings({ takes, visits }: FullRecords): LatestReading[] {
  const dates = new Map(visits.map(({ id, visitedOn }) => [id, visitedOn]));
  const newest = new Map<number, LatestReading>();
  for (const take of takes) {
    const visitedOn = dates.get(take.visitId);
    if (visitedOn === undefined || !take.isKept || !take.reading.quality.isUsable) continue;
    const key = take.midi * 4 + take.stringPosition;
    const before = newest.get(key);
    if (!before || orderOf(before) < `${visitedOn} ${take.recordedAt}`) newest.set(key, { take, visitedOn });
  }
  return [...newest].sort(([a], [b]) => a - b).map(([, latest]) => latest);
}

function orderOf({ visitedOn, take }: LatestReading): string {
  return `${visitedOn} ${take.recordedAt}`;
}

function stiffnessOf({ midi, stringPosition, reading }: Take): ChartedString[] {
  const { inharmonicityB: value, inharmonicityBStandardUncertainty: standardUncertainty } = reading;
  if (value === null || !(value > 0) || standardUncertainty === null) return [];
  return [{ midi, stringPosition, value, standardUncertainty }];
}

function lifeOf({ midi, stringPosition, reading: { lifeTimeS } }: Take): ChartedString[] {
  return lifeTimeS === null || !(lifeTimeS > 0)
    ? []
    : [{ midi, stringPosition, value: lifeTimeS, standardUncertainty: 0 }];
}

function columnsOf(words: ReportWords): ReportColumn<LatestReading>[] {
  const { long } = words;
  return [
    { title: long.string, isRowHeader: true, cell: ({ take }) => stringName(take, words) },
    { title: long.date, cell: ({ visitedOn }) => visitedOn },
    {
      title: long.offset,
      isNumber: true,
      cell: ({ take: { reading } }) => formatCents(reading.offsetCents, reading.offsetStandardUncertaintyCents),
    },
    {
      title: long.inharmonicity,
      isNumber: true,
      cell: ({ take: { reading } }) =>
        formatInharmonicity(reading.inharmonicityB, reading.inharmonicityBStandardUncertainty),
    },
    { title: long.life, isNumber: true, cell: ({ take }) => formatSeconds(take.reading.lifeTimeS) },
    { title: long.beats, cell: ({ take }) => beatsText(take, words) },
  ];
}

function beatsText({ reading: { beating } }: Take, { long }: ReportWords): string {
  const kind = long.beatKinds[beating.kind];
  return beating.rateHz === null ? kind || NOT_MEASURED : `${kind}, ${formatBeatRate(beating.rateHz)}`;
}
