/** `measure FILE…`: one note per recording. */
import type { MeasureDocument } from '../../files/measureDocument.ts';
import { noteOption, parseArguments, pitchStandardOption, stringOption } from '../commandOptions.ts';
import { measureAll } from '../measureAll.ts';
import type { MeasuredFile, MeasureJob } from '../measureFile.ts';
import { partialTable, readingTable } from '../readingTable.ts';
import { type Command, type Terminal, UsageFault } from '../terminal.ts';

const HELP = `Usage: measure FILE… [--note NAME] [--string K] [--pitch HZ] [--json]

Measures recordings of one note each (WAV, FLAC, OGG Vorbis, MP3): frequencies of the partials, inharmonicity, offset from
equal temperament, decay, beats, and how sure each figure is. Silence before the strike does no harm.

  --note NAME   the note that was played, as in A4 or F#3; found from the sound unless given
  --string K    which string sounded: 1, 2 or 3 from left to right seen from the keyboard, 0 the whole unison (default)
  --pitch HZ    the frequency of A4 that cents are counted from, 380 to 480; 440 unless given
  --json        one JSON document; with several files one array of them, in the order given

A file that cannot be read does not stop the others; the exit status is then 2.
A recording without a note gives no readings and a warning that says why; exit status 0.`;

export const measureCommand: Command = {
  name: 'measure',
  summary: 'partials, inharmonicity, cents, decay and beats of one note per recording',
  help: HELP,
  async run(args, terminal) {
    const { jobs, wantsJson } = readArguments(args);
    const measured = await measureAll(jobs, (doneCount) => {
      if (jobs.length > 1) terminal.progress(`${doneCount} of ${jobs.length} recordings measured`);
    });
    terminal.endProgress();
    const faults = measured.flatMap(({ fault }) => fault ?? []);
    if (jobs.length > 1 || faults.length === 0) printMeasured(measured, wantsJson, terminal);
    for (const { message } of faults) terminal.complain(`stillpin: ${message}`);
    return Math.max(0, ...faults.map(({ exitStatus }) => exitStatus));
  },
};

function readArguments(args: readonly string[]): { jobs: MeasureJob[]; wantsJson: boolean } {
  const { files, values } = parseArguments(args, {
    note: { type: 'string' },
    string: { type: 'string' },
    pitch: { type: 'string' },
    json: { type: 'boolean' },
  });
  const common = {
    pitchStandardHz: pitchStandardOption(values.pitch),
    stringPosition: stringOption(values.string),
    midi: noteOption(values.note),
  };
  if (files.length === 0) throw new UsageFault('measure needs at least one recording; measure --help explains it');
  return { jobs: files.map((file) => ({ file, ...common })), wantsJson: values.json === true };
}

function printMeasured(measured: readonly MeasuredFile[], wantsJson: boolean, terminal: Terminal): void {
  const documents = measured.map(({ document }) => document);
  const [only] = documents;
  if (wantsJson) {
    terminal.print(JSON.stringify(documents.length === 1 ? only : documents, null, 2));
    return;
  }
  const shared = sharedWarnings(documents);
  const rows = documents.map((document) => ({
    file: documents.length === 1 ? '' : document.file,
    reading: document.readings[0] ?? null,
    remark: document.warnings.filter((warning) => !shared.includes(warning)).join('; '),
  }));
  terminal.print(readingTable(rows));
  if (shared.length > 0) terminal.print(`\nall recordings: ${shared.join('; ')}`);
  const [reading] = only?.readings ?? [];
  if (documents.length === 1 && reading) terminal.print(`\n${partialTable(reading.partials)}`);
}

/** What is true of every one of several recordings is said once, below the table. */
function sharedWarnings(documents: readonly MeasureDocument[]): readonly string[] {
  const [first, ...others] = documents;
  if (!first || others.length === 0) return [];
  return first.warnings.filter((warning) => others.every((document) => document.warnings.includes(warning)));
}
