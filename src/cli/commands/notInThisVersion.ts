/** A command whose name and shape are fixed and whose work this version cannot do. It says so. */
import { type Command, UsageFault } from '../terminal.ts';

export function notInThisVersion(name: string, summary: string): Command {
  const explanation = `${name} is not in this version; measure and survey are`;
  return {
    name,
    summary: `${summary} (not in this version)`,
    help: explanation,
    run: () => Promise.reject(new UsageFault(explanation)),
  };
}
