/** `archive check|export|import`: what a file of records holds, a part of it, several of them together. */
import { checkArchiveFile } from '../archive/checkArchiveFile.ts';
import { exportArchive } from '../archive/exportArchive.ts';
import { importArchives } from '../archive/importArchives.ts';
import { type Command, type Terminal, UsageFault } from '../terminal.ts';

const HELP = `Usage: archive check FILE.zip [--json]
       archive export FROM.zip --out FILE.zip [--instrument NAME]… [--without-owners] [--without-visitors]
                      [--without-sounds] [--without-photographs]
       archive import FILE.zip… --into RECORDS.zip [--json]

An archive is a ZIP file of CSV tables, sounds and photographs with a description that other programs can read; README.txt in
it explains the tables.

  check    reads the whole file and says whether it is whole and readable, and what is in it: tables with their counts,
           instruments, clips, size, and every complaint with file, row and column. Exit status 2 where something is wrong.
  export   writes a part of an archive into a new one: some instruments, each by its name or id (all unless given), without
           owners' names and addresses, without who visited, without sounds or photographs.
  import   merges archives into RECORDS.zip, which is made where it is not there: nothing of either side is lost, and what was
           changed on both sides apart is kept twice until somebody chooses (table rivals). Where any of the files cannot be
           read whole, nothing is changed.

  --json   one JSON document`;

type SubCommand = (args: readonly string[], terminal: Terminal) => Promise<number>;

const SUB_COMMANDS: ReadonlyMap<string | undefined, SubCommand> = new Map([
  ['check', checkArchiveFile],
  ['export', exportArchive],
  ['import', importArchives],
]);

export const archiveCommand: Command = {
  name: 'archive',
  summary: 'whether an archive is whole and what is in it; a part of one; several together',
  help: HELP,
  run([name, ...args], terminal) {
    const subCommand = SUB_COMMANDS.get(name);
    if (subCommand) return subCommand(args, terminal);
    const got = name === undefined ? 'nothing' : `"${name}"`;
    return Promise.reject(
      new UsageFault(`archive needs check, export or import, got ${got}; archive --help explains them`),
    );
  },
};
