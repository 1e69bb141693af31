/** `drift HISTORY.csv`: what years of readings say about pins, block and weather. */
import { readEventsCsv, readHistoryCsv } from '../../files/historyCsv.ts';
import { readInstrumentFile } from '../../files/instrumentFile.ts';
import { midiToName } from '../../piano/note.ts';
import { analyseDrift, type Drift } from '../../stability/drift/analyseDrift.ts';
import { seededNormal } from '../../stability/drift/seededNormal.ts';
import { JUDGEMENT_SEED } from '../../stability/judgementSeed.ts';
import { parseArguments } from '../commandOptions.ts';
import { driftDocument } from '../driftDocument.ts';
import { type Command, type Terminal, UsageFault } from '../terminal.ts';
import { readTextFile } from '../textFile.ts';
import { type Column, textTable } from '../textTable.ts';

const HELP = `Usage: drift HISTORY.csv [--instrument FILE.json] [--events FILE.csv] [--json]

Judges years of readings: what the season did, what new wire still settles, which pins and which zones of the block go flat by
themselves, which single readings are wrong, and how sure all of it is.

  HISTORY.csv   one reading a row, with the columns visit_date,stage,rh_percent,temp_c,note,string,cents,cents_u
                (stage: as-found or as-left; climate and cents_u may be empty)
  --instrument  JSON such as {"compass": "A0-C8", "bassBridgeTop": "E2", "strutsAfter": ["E2","B4"]}
  --events      CSV with the columns date,kind,from_note,to_note,remark; kind is one of restrung, string-replaced,
                pin-replaced, block-work, moved, tuned
  --json        one JSON document`;

export const driftCommand: Command = {
  name: 'drift',
  summary: 'what years of readings say about pins, block and weather',
  help: HELP,
  async run(args, terminal) {
    const { files, values } = parseArguments(args, {
      instrument: { type: 'string' },
      events: { type: 'string' },
      json: { type: 'boolean' },
    });
    const [file] = files;
    if (file === undefined || files.length > 1)
      throw new UsageFault('drift needs one HISTORY.csv; drift --help explains it');
    const history = readHistoryCsv(await readTextFile(file));
    if (!history.ok) throw new UsageFault(`${file} ${history.message}`);
    const drift = analyseDrift({
      readings: history.rows,
      events: await eventsOf(values.events),
      instrument: await instrumentOf(values.instrument),
      thresholdCentsPerYear: 1,
      random: seededNormal(JUDGEMENT_SEED),
    });
    if (values.json === true) terminal.print(JSON.stringify(driftDocument(drift), null, 2));
    else printDrift(drift, terminal);
    return 0;
  },
};

async function eventsOf(file: unknown) {
  if (typeof file !== 'string') return [];
  const events = readEventsCsv(await readTextFile(file));
  if (!events.ok) throw new UsageFault(`${file} ${events.message}`);
  return events.rows;
}

async function instrumentOf(file: unknown) {
  if (typeof file !== 'string') return { compass: null, bassBridgeTopMidi: null, strutsAfterMidi: [] };
  const outcome = readInstrumentFile(await readTextFile(file));
  if (!outcome.ok) throw new UsageFault(`${file} ${outcome.message}`);
  return outcome.instrument;
}

function printDrift(drift: Drift, terminal: Terminal): void {
  terminal.print(`${drift.verdict.state}\n${drift.verdict.reasons.map((reason) => `  ${reason}`).join('\n')}`);
  const notable = drift.pins.filter((pin) => pin.isFlagged || (pin.slip.probability ?? 0) > 0.3);
  if (notable.length > 0) terminal.print(`\n${textTable(PIN_COLUMNS, notable)}`);
  if (drift.settling) {
    const { since, firstYearCents, remainingCentsPerYear } = drift.settling;
    const first = `${firstYearCents > 0 ? 'rose' : 'fell'} by ${size(firstYearCents)} in the first year`;
    const now = `now ${remainingCentsPerYear > 0 ? 'rising' : 'falling'} by ${size(remainingCentsPerYear)} a year`;
    terminal.print(`\nsettling since ${since}: ${first}, ${now}`);
  }
  for (const { visitedOn, midi, reason } of drift.outliers)
    terminal.print(`${visitedOn} ${midiToName(midi)}: ${reason}`);
}

function size(cents: number): string {
  return `${Math.abs(cents).toFixed(1)} cents`;
}

type Pin = Drift['pins'][number];

const PIN_COLUMNS: readonly Column<Pin>[] = [
  { title: 'note', align: 'left', text: (pin) => midiToName(pin.midi) },
  { title: 'string', align: 'right', text: (pin) => String(pin.stringPosition) },
  { title: 'cents a year', align: 'right', text: (pin) => slipText(pin) },
  { title: 'probability', align: 'right', text: (pin) => (pin.slip.probability ?? 0).toFixed(2) },
  { title: 'judgement', align: 'left', text: (pin) => (pin.isFlagged ? 'slips' : 'look again') },
];

function slipText({ slip }: Pin): string {
  if (slip.centsPerYear === null || slip.standardUncertainty === null) return '–';
  return `${slip.centsPerYear.toFixed(2)} ± ${slip.standardUncertainty.toFixed(2)}`;
}
