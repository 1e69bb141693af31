/** Words for which notes a survey asks for, and for choosing them. */
export const scopeTexts = {
  label: 'Which notes',
  kinds: {
    all: 'All notes',
    sample: 'A quick sample',
    section: 'One section',
    chosen: 'Chosen notes',
  },
  allNotes: 'all notes',
  sample: (count: number) => `quick sample of ${count} notes`,
  section: (range: string) => `section ${range}`,
  chosen: (notes: string) => `chosen notes ${notes}`,
  sampleCount: 'How many notes',
  sampleCountValue: (count: number, all: number) => `${count} of ${all} notes`,
  sampleNotes: 'It asks for:',
  answerUniform: (cents: string) =>
    `With the usual scatter of 0.7 cents from visit to visit, it can be sure that everything moved together once that is ${cents} cents or more`,
  answerZone: (noteCount: number, cents: string) =>
    `and it can see a zone of ${noteCount} neighbouring notes, wherever it lies, once it fell ${cents} cents or more below the rest`,
  answerLimit: 'A single pin that slips between the notes played stays unseen.',
  sectionWhole: 'Section',
  sectionOther: 'Other notes',
  from: 'From',
  to: 'To',
  chooseNotes: 'Touch the notes to be recorded',
  chosenCount: (count: number) => (count === 1 ? '1 note chosen' : `${count} notes chosen`),
  clear: 'Choose none',
  noneChosen: 'Choose at least one note.',
  chosenHint:
    'For the bridge work: mute the neighbours and play left, centre and right string of each note in turn. Skip a string that is not there.',
  /** What an as-left survey of a part says about the rest. */
  leftAs: {
    sample: 'The sample stands for the whole piano, which counts as tuned.',
    section: 'Only these notes count as tuned. Was more tuned? Add a tuning to the work done on the instrument’s page.',
    chosen: 'Only these notes count as tuned. Was more tuned? Add a tuning to the work done on the instrument’s page.',
  },
};
