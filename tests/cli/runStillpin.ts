/** Runs the command line as its users do: the bundle that buildBundle.ts has built, in a process of its own. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

export const SAMPLE_AUDIO = fileURLToPath(new URL('../../sample-audio/', import.meta.url));
const RUN_CLI = fileURLToPath(new URL('../../tools/runCli.mjs', import.meta.url));
const BUNDLE = fileURLToPath(new URL('../../dist-cli/cli.js', import.meta.url));

export type CommandResult = { readonly status: number | null; readonly stdout: string; readonly stderr: string };

/** @param folder where the user stands; sample-audio unless said. */
export function runStillpin(args: readonly string[], folder = SAMPLE_AUDIO): CommandResult {
  return runIn(folder, process.env, [BUNDLE, ...args]);
}

/** As npm does it: from the project's folder, the user's own folder in the environment. */
export function runThroughNpm(args: readonly string[], folder: string): CommandResult {
  const project = fileURLToPath(new URL('../../', import.meta.url));
  return runIn(project, { ...process.env, npm_lifecycle_event: 'stillpin', INIT_CWD: folder }, [RUN_CLI, ...args]);
}

function runIn(cwd: string, env: NodeJS.ProcessEnv, args: readonly string[]): CommandResult {
  const options = { cwd, env, encoding: 'utf8', maxBuffer: 2 ** 28 } as const;
  const { status, stdout, stderr } = spawnSync(process.execPath, [...args], options);
  return { status, stdout, stderr };
}

/** Parses standard output; that it holds one JSON document and nothing else is part of the claim. */
export function runForJson(args: readonly string[], folder?: string) {
  const result = runStillpin([...args, '--json'], folder);
  return { ...result, json: JSON.parse(result.stdout) };
}
