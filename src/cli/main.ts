/** The command line's front door: hands the arguments over and ends with the status that comes back. */
import { isMainThread } from 'node:worker_threads';
import { answerRequests } from './measuringThread.ts';
import { processTerminal } from './processTerminal.ts';
import { runCommandLine } from './runCommandLine.ts';

if (isMainThread) process.exitCode = await runCommandLine(process.argv.slice(2), processTerminal());
else answerRequests();
