/** How the torques of a block lie: as a whole, and from strut to strut. */
import { type RowBreaks, type RowSection, sectionsOf } from '../piano/surveyScope.ts';
import { type TorqueBandName, torqueBand } from './torqueBands.ts';
import type { PinTorque } from './torquePins.ts';

export type TorqueFigures = {
  readonly pinCount: number;
  readonly medianNm: number;
  readonly lowestNm: number;
  readonly highestNm: number;
  /** Pins that lie in the bands below adequate. */
  readonly doubtfulCount: number;
};

export type SectionTorque = RowSection & { readonly figures: TorqueFigures };

export type TorqueSummary = {
  /** Null where no pin was read. */
  readonly whole: TorqueFigures | null;
  /** Sections with a reading, from the lowest up; empty where nothing is known to break the row. */
  readonly sections: readonly SectionTorque[];
};

const DOUBTFUL_BANDS: readonly TorqueBandName[] = ['below holding', 'doubtful'];

export function torqueSummary(pins: readonly PinTorque[], row: RowBreaks): TorqueSummary {
  const sections = sectionsOf(row);
  if (sections.length < 2) return { whole: figuresOf(pins), sections: [] };
  const found = sections.flatMap((section) => {
    const figures = figuresOf(pins.filter(({ midi }) => midi >= section.fromMidi && midi <= section.toMidi));
    return figures ? [{ ...section, figures }] : [];
  });
  return { whole: figuresOf(pins), sections: found };
}

function figuresOf(pins: readonly PinTorque[]): TorqueFigures | null {
  if (pins.length === 0) return null;
  const rising = pins.map(({ torqueNm }) => torqueNm).sort((a, b) => a - b);
  const middle = (rising.length - 1) / 2;
  const [below, above] = [rising[Math.floor(middle)] ?? 0, rising[Math.ceil(middle)] ?? 0];
  return {
    pinCount: pins.length,
    medianNm: (below + above) / 2,
    lowestNm: rising[0] ?? 0,
    highestNm: rising.at(-1) ?? 0,
    doubtfulCount: pins.filter(({ torqueNm }) => DOUBTFUL_BANDS.includes(torqueBand(torqueNm))).length,
  };
}
