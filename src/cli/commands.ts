/** Every command there is: a new one is one more entry. */
import { archiveCommand } from './commands/archive.ts';
import { driftCommand } from './commands/drift.ts';
import { measureCommand } from './commands/measure.ts';
import { notInThisVersion } from './commands/notInThisVersion.ts';
import { scaleCommand } from './commands/scale.ts';
import { surveyCommand } from './commands/survey.ts';
import type { Command } from './terminal.ts';

export const COMMANDS: readonly Command[] = [
  measureCommand,
  surveyCommand,
  driftCommand,
  scaleCommand,
  notInThisVersion('report', "the owner's page as one file"),
  archiveCommand,
];
