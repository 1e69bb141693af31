/** Every command there is: a new one is one more entry. */
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
  notInThisVersion('archive', 'whether an archive is whole, and what is in it'),
];
