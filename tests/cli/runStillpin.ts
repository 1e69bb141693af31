/** Runs the command line as its users do: the built bundle, in a process of its own. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const SAMPLE_AUDIO = fileURLToPath(new URL('../../sample-audio/', import.meta.url));
const RUN_CLI = fileURLToPath(new URL('../../tools/runCli.mjs', import.meta.url));

export type CommandResult = { readonly status: number | null; readonly stdout: string; readonly stderr: string };

/** @param folder where the user stands; sample-audio unless said. */
export function runStillpin(args: readonly string[], folder = SAMPLE_AUDIO): CommandResult {
  const { status, stdout, stderr } = spawnSync(process.execPath, [RUN_CLI, ...args], {
    env: { ...process.env, INIT_CWD: folder },
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  return { status, stdout, stderr };
}

/** Parses standard output; that it holds one JSON document and nothing else is part of the claim. */
export function runForJson(args: readonly string[], folder?: string) {
  const result = runStillpin([...args, '--json'], folder);
  return { ...result, json: JSON.parse(result.stdout) };
}
