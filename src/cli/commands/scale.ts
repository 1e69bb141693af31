/** `scale SCHEDULE.csv`: tension, stress and breaking percentage of a stringing schedule. */
import { readScheduleCsv } from '../../files/scheduleCsv.ts';
import { midiToName } from '../../piano/note.ts';
import { analyseScale, type ScaleFigures } from '../../stringing/scale/analyseScale.ts';
import type { NoteFigures } from '../../stringing/scale/noteFigures.ts';
import { parseArguments, pitchStandardOption } from '../commandOptions.ts';
import { scaleDocument } from '../scaleDocument.ts';
import { cautionLines, kilonewtons, SAFETY_WORDS } from '../scaleWords.ts';
import { type Command, type Terminal, UsageFault } from '../terminal.ts';
import { readTextFile } from '../textFile.ts';
import { type Column, textTable } from '../textTable.ts';

const HELP = `Usage: scale SCHEDULE.csv [--pitch HZ] [--json]

Tension, stress, share of breaking and expected inharmonicity of every note of a stringing schedule, the pull of all strings, and the
steps between neighbours that stand out.

  SCHEDULE.csv  one row a note, with the columns note,strings,speaking_length_mm,wire_diameter_mm,core_diameter_mm,wrap,wire_grade
                (wire_diameter_mm is the plain wire, or the diameter over the wrap; core_diameter_mm and wrap are empty for plain
                wire; wrap: copper, iron or brass; wire_grade: ASTM A228 or EN 10270-1 SM, else the share of breaking is not known;
                an optional column bridge: bass or long)
  --pitch       the frequency of A4 in Hz; 440 unless given
  --json        one JSON document`;

export const scaleCommand: Command = {
  name: 'scale',
  summary: 'tension, stress and breaking percentage of a stringing schedule',
  help: HELP,
  async run(args, terminal) {
    const { files, values } = parseArguments(args, { pitch: { type: 'string' }, json: { type: 'boolean' } });
    const [file] = files;
    if (file === undefined || files.length > 1)
      throw new UsageFault('scale needs one SCHEDULE.csv; scale --help explains it');
    const pitchStandardHz = pitchStandardOption(values.pitch);
    const schedule = readScheduleCsv(await readTextFile(file));
    if (!schedule.ok) throw new UsageFault(`${file} ${schedule.message}`);
    const scale = analyseScale(schedule.rows, { pitchStandardHz });
    if (values.json === true) terminal.print(JSON.stringify(scaleDocument(file, schedule.rows, scale), null, 2));
    else printScale(scale, terminal);
    return 0;
  },
};

function printScale(scale: ScaleFigures, terminal: Terminal): void {
  terminal.print(textTable(NOTE_COLUMNS, scale.notes));
  terminal.print(`\n${textTable(SECTION_COLUMNS, scale.sections)}`);
  if (scale.total)
    terminal.print(`\nall strings together, at A4 = ${scale.pitchStandardHz} Hz: ${totalText(scale.total)}`);
  const cautions = cautionLines(scale.cautions);
  if (cautions.length > 0) terminal.print(`\n${cautions.join('\n')}`);
  terminal.print(`\n${SAFETY_WORDS}`);
}

function totalText({ tensionN, stringCount, unknownNoteCount }: NonNullable<ScaleFigures['total']>): string {
  const missing = unknownNoteCount > 0 ? `, without ${unknownNoteCount} notes whose pull is not known` : '';
  return `${kilonewtons(tensionN)} on ${stringCount} strings${missing}`;
}

const NOTE_COLUMNS: readonly Column<NoteFigures>[] = [
  { title: 'note', align: 'left', text: ({ midi }) => midiToName(midi) },
  { title: 'strings', align: 'right', text: ({ stringCount }) => figure(stringCount, 0) },
  { title: 'wire', align: 'left', text: ({ isWound }) => (isWound ? 'wound' : 'plain') },
  { title: 'tension N', align: 'right', text: ({ tensionN }) => figure(tensionN, 1) },
  { title: 'stress MPa', align: 'right', text: ({ stressMpa }) => figure(stressMpa, 1) },
  { title: 'breaking %', align: 'right', text: ({ breakingShare: share }) => figure(share && 100 * share, 1) },
  { title: 'table', align: 'left', text: ({ strength }) => (strength?.known ? strength.gradeName : '–') },
  { title: 'B expected', align: 'right', text: ({ predictedB: b }) => (b === null ? '–' : b.toExponential(3)) },
  { title: 'note N', align: 'right', text: ({ noteTensionN }) => figure(noteTensionN, 1) },
];

const SECTION_COLUMNS: readonly Column<ScaleFigures['sections'][number]>[] = [
  { title: 'section', align: 'left', text: ({ fromMidi, toMidi }) => `${midiToName(fromMidi)}-${midiToName(toMidi)}` },
  { title: 'strings', align: 'right', text: ({ stringCount }) => String(stringCount) },
  { title: 'tension N', align: 'right', text: ({ tensionN }) => tensionN.toFixed(0) },
];

function figure(value: number | null, digits: number): string {
  return value === null ? '–' : value.toFixed(digits);
}
