/** Every command there is: a new one is one more entry. */
import { archiveCommand } from './commands/archive.ts';
import { driftCommand } from './commands/drift.ts';
import { measureCommand } from './commands/measure.ts';
import { reportCommand } from './commands/report.ts';
import { scaleCommand } from './commands/scale.ts';
import { surveyCommand } from './commands/survey.ts';
import type { Command } from './terminal.ts';

export const COMMANDS: readonly Command[] = [
  measureCommand,
  surveyCommand,
  driftCommand,
  scaleCommand,
  reportCommand,
  archiveCommand,
];
