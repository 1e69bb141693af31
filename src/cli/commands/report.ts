/** `report ARCHIVE.zip`: the owner's page of one instrument as one file. */
import { writeFile } from 'node:fs/promises';
import { LANGUAGES, type Language, writeFiguresIn } from '../../piano/formatLanguage.ts';
import { judgeRecords } from '../../report/judgedRecords.ts';
import { OPTIONAL_SECTIONS, type OptionalSection, type OwnersPage, ownersPage } from '../../report/ownersPage.ts';
import { ownersPageFile } from '../../report/ownersPageHtml.ts';
import { reportWordsIn } from '../../report/wordsIn.ts';
import { unwritable } from '../archive/writeNewFile.ts';
import { parseArguments } from '../commandOptions.ts';
import { readInstrumentOfArchive } from '../readInstrumentOfArchive.ts';
import { type Command, UsageFault } from '../terminal.ts';

const MOST_PHOTOGRAPHS = 4;

const HELP = `Usage: report ARCHIVE.zip --instrument NAME --out FILE.html [--leave-out SECTION,…] [--photographs COUNT]
              [--remark TEXT] [--language en|de] [--json]

Writes the owner's page of one instrument as one HTML file that prints on A4 and US Letter: whether it holds its pitch and how
sure that is, how it moved over the years with the humidity, false beats before and after work, what is recommended, what was
done when, and how it was measured. The file needs nothing else: no script, no network. Every figure on it comes from the archive.

  --instrument NAME  the instrument's name as the records have it, or its id; may be left out where the archive holds only one
  --out FILE.html    where to write the page; a file that is there is replaced
  --leave-out LIST   sections to leave out, with commas between: ${OPTIONAL_SECTIONS.join(', ')}
  --photographs N    so many of the newest photographs, 0 to 20; ${MOST_PHOTOGRAPHS} unless given
  --remark TEXT      a remark of your own, which the page marks as the technician's
  --language en|de   the language of the page; English unless given
  --json             one JSON document with the page's sentences instead of a line about it; the file is written all the same`;

export const reportCommand: Command = {
  name: 'report',
  summary: "the owner's page of an instrument as one file",
  help: HELP,
  async run(args, terminal) {
    const { archive, out, instrument, photographCount, leftOut, remark, language, wantsJson } = readArguments(args);
    const { records, photographs } = await readInstrumentOfArchive(archive, instrument, photographCount, terminal);
    writeFiguresIn(language);
    const words = reportWordsIn(language);
    const page = ownersPage(judgeRecords(records), words, { leftOut, photographs, remark });
    await writePage(out, ownersPageFile(page, words));
    terminal.print(wantsJson ? JSON.stringify(document(page, out), null, 2) : summary(page, out));
    return 0;
  },
};

function readArguments(args: readonly string[]) {
  const { files, values } = parseArguments(args, {
    instrument: { type: 'string' },
    out: { type: 'string' },
    'leave-out': { type: 'string' },
    photographs: { type: 'string' },
    remark: { type: 'string' },
    language: { type: 'string' },
    json: { type: 'boolean' },
  });
  const [archive, ...more] = files;
  if (archive === undefined) throw new UsageFault('report needs an archive; report --help explains it');
  if (more.length > 0) throw new UsageFault(`report takes one archive, got ${files.length}; make the pages one by one`);
  if (typeof values.out !== 'string' || values.out === '')
    throw new UsageFault('--out must name the file to write, as in --out page.html');
  return {
    archive,
    out: values.out,
    instrument: typeof values.instrument === 'string' ? values.instrument : null,
    leftOut: leftOutOption(values['leave-out']),
    photographCount: photographsOption(values.photographs),
    remark: typeof values.remark === 'string' ? values.remark : '',
    language: languageOption(values.language),
    wantsJson: values.json === true,
  };
}

function languageOption(text: unknown): Language {
  if (typeof text !== 'string') return 'en';
  const language = LANGUAGES.find((known) => known === text);
  if (language) return language;
  throw new UsageFault(`--language must be one of ${LANGUAGES.join(', ')}, got "${text}"`);
}

function leftOutOption(text: unknown): OptionalSection[] {
  if (typeof text !== 'string') return [];
  return text.split(',').map((name) => {
    const section = OPTIONAL_SECTIONS.find((known) => known === name.trim());
    if (section) return section;
    throw new UsageFault(`--leave-out must name sections out of ${OPTIONAL_SECTIONS.join(', ')}, got "${name.trim()}"`);
  });
}

function photographsOption(text: unknown): number {
  if (typeof text !== 'string') return MOST_PHOTOGRAPHS;
  const count = /^\d{1,2}$/.test(text) ? Number(text) : Number.NaN;
  if (count >= 0 && count <= 20) return count;
  throw new UsageFault(`--photographs must be a whole number from 0 to 20, got "${text}"`);
}

async function writePage(file: string, html: string): Promise<void> {
  await writeFile(file, html, 'utf8').catch((error: unknown) => {
    throw unwritable(file, error);
  });
}

function summary(page: OwnersPage, out: string): string {
  return [
    `${page.name}: ${page.verdict.headline}`,
    ...[...page.verdict.sentences, ...page.verdict.newWire].map((line) => `  ${line}`),
    `written to ${out}`,
  ].join('\n');
}

/** The sentences as they stand on the page; sections that were left out are null. */
function document(page: OwnersPage, out: string) {
  const { name, asOf, verdict, course, falseBeats, advice, work, remark, photographs, method } = page;
  return {
    out,
    instrument: name,
    asOf,
    verdict: {
      state: verdict.state,
      headline: verdict.headline,
      sentences: verdict.sentences,
      newWire: verdict.newWire,
    },
    course: course && { comparisons: course.course.steps.length, sentences: course.sentences },
    falseBeats: falseBeats && { rows: falseBeats.rows, sentences: falseBeats.sentences },
    advice: advice?.sentences ?? null,
    work: work && { rows: work.rows },
    photographs: photographs?.pictures.map(({ caption, takenAt }) => ({ caption, takenAt })) ?? null,
    remark: remark?.text ?? null,
    method: method.sentences,
  };
}
