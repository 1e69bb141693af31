/** What the command line says about a scale's cautions. */
import { formatNotes } from '../piano/format.ts';
import { midiToName } from '../piano/note.ts';
import { SCHEDULE_COLUMNS, type ScheduleField } from '../piano/wireScheduleCell.ts';
import type { ScaleCaution } from '../stringing/scale/scaleCautions.ts';
import type { TensionJump } from '../stringing/scale/tensionJumps.ts';

export function cautionText(caution: ScaleCaution): string {
  switch (caution.kind) {
    case 'stress-very-high':
      return `at ${percent(caution.share)} of the least strength of its wire: it is likely to stretch for good or to break`;
    case 'stress-high':
      return `at ${percent(caution.share)} of the least strength of its wire: high, by common practice`;
    case 'stress-low':
      return `at ${percent(caution.share)} of the least strength of its wire: low, so humidity will move its pitch most`;
    case 'grade-unknown':
      return 'no strength table for its wire_grade: the share of breaking is not known';
    case 'diameter-outside-table':
      return "its diameter lies outside its wire grade's table: the share of breaking is not known";
    case 'figures-missing':
      return `${columns(caution.fields)} missing`;
    case 'rests-on-interpolated':
      return `${columns(caution.fields)} interpolated, not measured`;
    case 'tension-jump':
      return jumpText(caution.jump);
    case 'total-high':
      return `the strings pull with ${kilonewtons(caution.tensionN)} together, more than the 150 to 200 kN that are usual`;
  }
}

function jumpText({ toMidi, tensionChange, ofLength, ofMass, isAtBreak }: TensionJump): string {
  const step = `the next note up, ${midiToName(toMidi)}, pulls ${percent(Math.abs(tensionChange))} ${tensionChange > 0 ? 'more' : 'less'}`;
  const parts = `${signedPercent(ofLength)} by its length, ${signedPercent(ofMass)} by its wire`;
  return `${step} (${parts})${isAtBreak ? ', at a break' : ''}`;
}

/** The cautions for people, in order: those of stress and of missing tables gathered over the notes that share them. */
export function cautionLines(cautions: readonly ScaleCaution[]): string[] {
  const told = new Set<string>();
  return cautions.flatMap((caution) => {
    const alike = cautions.filter(({ kind }) => kind === caution.kind);
    if (caution.midi === null) return [cautionText(caution)];
    if (!GATHERED.has(caution.kind)) return [`${midiToName(caution.midi)}: ${cautionText(caution)}`];
    if (told.has(caution.kind)) return [];
    told.add(caution.kind);
    const notes = formatNotes(alike.flatMap(({ midi }) => midi ?? [])).replaceAll('♯', '#');
    return [`${notes}: ${gatheredText(alike)}`];
  });
}

const GATHERED: ReadonlySet<ScaleCaution['kind']> = new Set([
  'stress-very-high',
  'stress-high',
  'stress-low',
  'grade-unknown',
  'diameter-outside-table',
]);

function gatheredText(alike: readonly ScaleCaution[]): string {
  const shares = alike.flatMap((caution) => ('share' in caution ? caution.share : []));
  const [first] = alike;
  const [least, most] = [percent(Math.min(...shares)), percent(Math.max(...shares))];
  const text = first ? cautionText(first) : '';
  return shares.length < 2 || least === most ? text : text.replace(/^at [^%]+%/, `at ${least} to ${most}`);
}

/** Said with every scale that is printed for people. */
export const SAFETY_WORDS = [
  'Tension at the sounding pitch in equal temperament, without stretch; stress against the least strength that the named table gives.',
  'These figures support the judgement of a qualified technician and never replace it. No figure here says what an old plate bears:',
  'plates crack, sometimes hours later. Breaking wire injures eyes and hands: stand out of its line and protect your eyes.',
].join('\n');

export function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`;
}

function signedPercent(share: number): string {
  return `${share < 0 ? '-' : '+'}${percent(Math.abs(share))}`;
}

export function kilonewtons(forceN: number): string {
  return `${(forceN / 1000).toFixed(1)} kN`;
}

function columns(fields: readonly ScheduleField[]): string {
  return fields.map((field) => SCHEDULE_COLUMNS[field]).join(', ');
}
