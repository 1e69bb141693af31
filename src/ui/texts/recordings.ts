/** Words for reading a survey from recordings instead of a microphone. */
export const recordingsTexts = {
  title: 'Use recordings',
  choose: 'Use recordings …',
  drop: 'Or drop files here: one of a whole survey, or many of single notes. WAV, FLAC, OGG Vorbis, MP3.',
  dropNow: 'Let go to read these files',
  reading: (count: number) => `Reading ${count === 1 ? 'the recording' : `${count} recordings`} …`,
  percent: (percent: number) => `${percent} % read`,
  progressLabel: 'How much has been read',
  stop: 'Stop reading',
  stopped: 'Reading was stopped. What was kept until then stays.',
  done: (noteCount: number, fileCount: number) =>
    `${noteCount} ${noteCount === 1 ? 'take was' : 'takes were'} read from ${fileCount} ${fileCount === 1 ? 'recording' : 'recordings'}.`,
  failed: (detail: string) =>
    `The reading stopped because of a fault in the program; what was kept until then stays. ${detail}`,
  unreadable: (count: number) => `${count} ${count === 1 ? 'file' : 'files'} could not be read:`,
  unreadableFile: (name: string, why: string) => `${name}: ${why}.`,
  silent: (names: string) => `No note was found in ${names}.`,
  warning: (name: string, what: string) => `${name}: ${what}.`,
  stillReading: 'The recordings are still being read. Wait until they are, or stop reading first.',
  more: (names: string, count: number) => `${names} and ${count} more`,
};
