/** Finds the command and turns whatever goes wrong into one line and an exit status. */
import { COMMANDS } from './commands.ts';
import { type Command, type Terminal, UsageFault } from './terminal.ts';

const OVERVIEW = 'npm run --silent stillpin -- --help';

/** @returns the exit status. */
export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<number> {
  try {
    return await runCommand(args, terminal);
  } catch (error) {
    terminal.endProgress();
    terminal.complain(`stillpin: ${error instanceof Error ? error.message : String(error)}`);
    return error instanceof UsageFault ? 2 : 1;
  }
}

async function runCommand([name, ...args]: readonly string[], terminal: Terminal): Promise<number> {
  if (name === undefined) throw new UsageFault(`no command given; \`${OVERVIEW}\` lists them`);
  if (name === '--help' || name === '-h' || name === 'help') {
    terminal.print(overview(COMMANDS));
    return 0;
  }
  const command = COMMANDS.find((candidate) => candidate.name === name);
  if (!command) throw new UsageFault(`there is no command "${name}"; \`${OVERVIEW}\` lists them`);
  if (wantsHelp(args)) {
    terminal.print(command.help);
    return 0;
  }
  return command.run(args, terminal);
}

/** `--help` anywhere before `--`, after which everything is a file name. */
function wantsHelp(args: readonly string[]): boolean {
  const end = args.indexOf('--');
  return args.slice(0, end === -1 ? args.length : end).some((arg) => arg === '--help' || arg === '-h');
}

function overview(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((command) => command.name.length));
  return [
    'Stillpin measures recordings of pianos and judges what years of readings say.',
    '',
    'Usage: npm run --silent stillpin -- COMMAND …',
    '',
    ...commands.map((command) => `  ${command.name.padEnd(width)}  ${command.summary}`),
    '',
    'COMMAND --help explains a command. With --json one JSON document is printed instead of a table.',
    'Exit status: 0 success, 2 wrong usage or input that cannot be read, 1 anything else.',
  ].join('\n');
}
