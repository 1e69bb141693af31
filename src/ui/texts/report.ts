/** Words around the owner's page; those on it are in report/words.ts. */
export const reportTexts = {
  link: 'The owner’s page',
  title: 'The owner’s page',
  next: 'Choose what goes in, then print it or save it as a file that opens in any browser.',
  print: 'Print',
  save: 'Save as a file',
  fileName: 'owner’s page',
  choice: {
    title: 'What goes in',
    note: 'Remembered on this device. The verdict, how it was measured and the cautions always stand on the page.',
    sections: {
      owner: 'Whose it is and where it stands',
      course: 'How it kept its pitch',
      'false-beats': 'False beats',
      advice: 'What we recommend',
      work: 'What was done when',
      photographs: 'Photographs',
    },
    photographs: 'Photographs to show',
    photograph: (caption: string, date: string) => (caption === '' ? `Photograph of ${date}` : `${caption} (${date})`),
    noPhotographs: 'No photographs have been added to this instrument.',
    remark: 'A remark of your own',
    remarkHint: 'Stands on the page as the technician’s remark, apart from the measured figures.',
  },
  page: 'The page',
  pageNote: 'As it prints on A4 or US Letter.',
};
