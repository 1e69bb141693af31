/** The terminal of this process. */
import type { Terminal } from './terminal.ts';

/** Somebody who waits longer than this for a result wants to know that work goes on, even in a log file. */
const SILENCE_S = 60;

export function processTerminal(): Terminal {
  const isWatched = process.stderr.isTTY === true;
  let lastProgressMs = performance.now();
  let isProgressShown = false;
  // A reader that has seen enough (`… | head`) closes the pipe: that is no error of ours.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));
  // The sound decoders report damage by console.error besides returning it; what they return becomes a warning.
  console.error = () => undefined;
  const endProgress = () => {
    if (isProgressShown) process.stderr.write('\r\x1b[K');
    isProgressShown = false;
  };
  return {
    print: (text) => void process.stdout.write(`${text}\n`),
    complain(line) {
      endProgress();
      process.stderr.write(`${oneLine(line)}\n`);
    },
    progress(line) {
      if (isWatched) {
        process.stderr.write(`\r\x1b[K${oneLine(line)}`);
        isProgressShown = true;
      } else if (performance.now() - lastProgressMs > SILENCE_S * 1000) {
        process.stderr.write(`${oneLine(line)}\n`);
        lastProgressMs = performance.now();
      }
    },
    endProgress,
  };
}

function oneLine(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters in file names are what is looked for
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, (character) =>
    JSON.stringify(character).slice(1, -1),
  );
}
