/** What a command may say, and where. */
export type Terminal = {
  /** Standard output: the result and nothing else. A line break is added. */
  print(text: string): void;
  /** Standard error: one line, control characters made visible. */
  complain(line: string): void;
  /** Standard error, only where somebody watches it or the work takes long. */
  progress(line: string): void;
  /** Removes the last progress line where it can be removed. */
  endProgress(): void;
};

/** A command and what it ends with: 0 success, 2 wrong usage or unreadable input, 1 anything else. */
export type Command = {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** What `--help` prints. */
  readonly help: string;
  run(args: readonly string[], terminal: Terminal): Promise<number>;
};

/** Wrong usage or input that cannot be read: ends the command with status 2 and this one line. */
export class UsageFault extends Error {
  override name = 'UsageFault';
}
