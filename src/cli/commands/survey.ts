/** `survey FILE`: one recording of many notes played one after another. */
import type { StandsOutDocument, SurveyFileDocument } from '../../files/surveyFileDocument.ts';
import { formatCount, formatNumber } from '../../piano/format.ts';
import { compassOption, parseArguments, pitchStandardOption, stringOption } from '../commandOptions.ts';
import { readingTable } from '../readingTable.ts';
import { surveyFile } from '../surveyFile.ts';
import { type Command, UsageFault } from '../terminal.ts';

const HELP = `Usage: survey FILE [--compass A0-C8] [--string K] [--pitch HZ] [--json]

Measures one recording of many notes played one after another (WAV, FLAC, OGG Vorbis, MP3): finds each strike, which note
it is, and measures it as the measure command does. Says which notes of the compass were never heard, and which were
played more than once (the best take is kept, every take is listed, and the kept one's uncertainty is no smaller than what
its strikes differ by). Below the table stand notes whose inharmonicity stands out from the curve of the whole instrument,
and notes that live less than half as long as those around them.

  --compass LOW-HIGH  the notes that the piano has; A0-C8 unless given
  --string K          which string sounded: 1, 2 or 3 from left to right, 0 the whole unison (default)
  --pitch HZ          the frequency of A4 that cents are counted from, 380 to 480; 440 unless given
  --json              one JSON document`;

export const surveyCommand: Command = {
  name: 'survey',
  summary: 'every note of one recording that goes through the compass',
  help: HELP,
  async run(args, terminal) {
    const { file, wantsJson, ...options } = readArguments(args);
    const document = await surveyFile(file, options, terminal.progress);
    terminal.endProgress();
    terminal.print(wantsJson ? JSON.stringify(document, null, 2) : surveyText(document));
    return 0;
  },
};

function readArguments(args: readonly string[]) {
  const { files, values } = parseArguments(args, {
    compass: { type: 'string' },
    string: { type: 'string' },
    pitch: { type: 'string' },
    json: { type: 'boolean' },
  });
  const options = {
    compass: compassOption(values.compass),
    stringPosition: stringOption(values.string),
    pitchStandardHz: pitchStandardOption(values.pitch),
  };
  const [file, ...more] = files;
  if (file === undefined) throw new UsageFault('survey needs a recording; survey --help explains it');
  if (more.length > 0) throw new UsageFault(`survey takes one recording, got ${files.length}; survey them one by one`);
  return { file, wantsJson: values.json === true, ...options };
}

function surveyText(document: SurveyFileDocument): string {
  const dropped = new Set(document.repeated.flatMap((repeat) => repeat.dropped));
  const rows = document.readings.map((reading, index) => ({
    file: '',
    reading,
    remark: dropped.has(index) ? 'not kept: a better take of this note follows or came before' : '',
  }));
  return [
    ...(rows.length > 0 ? [readingTable(rows), ''] : []),
    `${formatCount(rows.length, 'take', 'takes')}, ${formatCount(document.skipped.length, 'note', 'notes')} of the compass not heard`,
    ...(document.skipped.length > 0 && rows.length > 0 ? [`not heard: ${document.skipped.join(' ')}`] : []),
    ...notesOffTheirCurves(document),
    ...document.warnings,
  ].join('\n');
}

/** Nothing where nothing stands out. */
function notesOffTheirCurves({ inharmonicityCurve, lifeCurve }: SurveyFileDocument): string[] {
  const standsOut = inharmonicityCurve?.standsOut ?? [];
  const weak = lifeCurve?.weak ?? [];
  return [
    ...(standsOut.length > 0
      ? [`inharmonicity stands out from the rest: ${standsOut.map(offCurveText).join(', ')}`]
      : []),
    ...(weak.length > 0
      ? [`weak, living less than half as long as notes around: ${weak.map(offCurveText).join(', ')}`]
      : []),
  ];
}

function offCurveText({ note, ratio }: StandsOutDocument): string {
  return `${note} (${formatNumber(ratio, 2)} times)`;
}
