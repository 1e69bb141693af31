/** Words around the long record; those on it are in report/words.ts. */
export const longRecordTexts = {
  link: 'The long record',
  title: 'The long record',
  subtitle: 'Every visit, every comparison, every chart and table: for a colleague.',
  print: 'Print',
  savePage: 'Save the page',
  saveReadings: 'Readings as CSV',
  saveWork: 'Work as CSV',
  fileNames: { page: 'long record', readings: 'readings', work: 'work' },
  csvNote:
    'The CSV of readings holds every kept take of every visit; its first columns are what the drift command reads, and “cents” there is against A4 = 440 Hz at every visit.',
};
