/**
 * The owner's page as plain data: what the instrument is, whether it holds, how it kept its pitch, what is recommended. Every sentence is
 * built from the records by the table of words; only the remark is somebody's own, and says so.
 */
import type { JudgedRecords } from './judgedRecords.ts';
import { adviceSentences } from './ownersAdvice.ts';
import { type CourseSection, courseSection } from './ownersCourse.ts';
import { type BeatSection, beatSection } from './ownersFalseBeats.ts';
import { type Fact, instrumentFacts, ownerFacts, pageSubtitle } from './ownersInstrument.ts';
import { methodSentences } from './ownersMethod.ts';
import { type VerdictSection, verdictSection } from './ownersVerdict.ts';
import { type WorkSection, workSection } from './ownersWork.ts';
import type { ReportPhotograph } from './reportRecords.ts';
import type { ReportWords } from './words.ts';

/** What can be left out. Verdict, method and cautions always stand on the page: figures without them mislead. */
export const OPTIONAL_SECTIONS = ['owner', 'course', 'false-beats', 'advice', 'work', 'photographs'] as const;
export type OptionalSection = (typeof OPTIONAL_SECTIONS)[number];

export type Sentences = { readonly title: string; readonly sentences: readonly string[] };

export type OwnersPage = {
  readonly language: string;
  readonly title: string;
  readonly name: string;
  readonly subtitle: string;
  /** As of which visit; or that there was none. */
  readonly asOf: string;
  /** Says that all of it is invented; null for a real instrument. */
  readonly demonstration: string | null;
  readonly facts: readonly Fact[];
  readonly verdict: VerdictSection;
  readonly course: CourseSection | null;
  readonly falseBeats: BeatSection | null;
  readonly advice: Sentences | null;
  readonly work: WorkSection | null;
  readonly photographs: { readonly title: string; readonly pictures: readonly ReportPhotograph[] } | null;
  readonly remark: { readonly title: string; readonly note: string; readonly text: string } | null;
  readonly cautions: Sentences;
  readonly method: Sentences;
};

export type OwnersPageChoice = {
  readonly leftOut: readonly OptionalSection[];
  readonly photographs: readonly ReportPhotograph[];
  /** Empty: none. */
  readonly remark: string;
};

export function ownersPage(records: JudgedRecords, words: ReportWords, choice: OwnersPageChoice): OwnersPage {
  const { instrument } = records;
  const wanted = (section: OptionalSection) => !choice.leftOut.includes(section);
  const remark = choice.remark.trim();
  return {
    language: words.language,
    title: words.pageTitle(instrument.name),
    name: instrument.name,
    ...pageSubtitle(records, words),
    demonstration: instrument.isDemonstration ? words.demonstration : null,
    facts: [...instrumentFacts(instrument, words), ...(wanted('owner') ? ownerFacts(instrument, words) : [])],
    verdict: verdictSection(records, words),
    course: wanted('course') ? courseSection(records, words) : null,
    falseBeats: wanted('false-beats') ? beatSection(records, words) : null,
    advice: wanted('advice') ? { title: words.advice.title, sentences: adviceSentences(records, words) } : null,
    work: wanted('work') ? workSection(records, words) : null,
    photographs:
      wanted('photographs') && choice.photographs.length > 0
        ? { title: words.photographs.title, pictures: choice.photographs }
        : null,
    remark: remark === '' ? null : { ...words.remark, text: remark },
    cautions: { title: words.cautions.title, sentences: [words.cautions.tension, words.cautions.judgement] },
    method: { title: words.method.title, sentences: methodSentences(records, words) },
  };
}
