/** datapackage.json of an archive, read and distrusted. */
import * as v from 'valibot';
import type { LeftOut } from './archiveContents.ts';
import { ArchiveFault, damaged } from './archiveFault.ts';
import { ARCHIVE_VERSION } from './archiveTables.ts';
import { PACKAGE_FILE } from './dataPackage.ts';
import { pathFault } from './safePath.ts';
import { readTaggedJson } from './taggedJson.ts';
import type { ZipEntry } from './zipDirectory.ts';
import { type Expected, type Packed, readEntry } from './zipEntry.ts';

export type PackageDescription = {
  readonly createdAt: string | null;
  readonly programVersion: string;
  readonly leftOut: readonly LeftOut[];
  readonly resources: readonly DescribedFile[];
};
export type DescribedFile = {
  readonly name: string;
  readonly path: string;
  readonly isTable: boolean;
  readonly expected: Expected;
};

const LARGEST_DESCRIPTION = 64e6;

const version = v.object({ stillpin: v.object({ archiveVersion: v.pipe(v.number(), v.integer(), v.minValue(1)) }) });

const description = v.object({
  created: v.optional(v.string()),
  stillpin: v.object({
    programVersion: v.optional(v.string(), 'unknown'),
    leftOut: v.optional(v.array(v.picklist(['owners', 'visitors', 'sounds', 'photographs'])), []),
  }),
  resources: v.array(
    v.object({
      name: v.string(),
      path: v.string('has to be the name of one file'),
      type: v.optional(v.string()),
      format: v.optional(v.string()),
      hash: v.optional(
        v.pipe(v.string(), v.regex(/^sha256:[0-9a-f]{64}$/, 'has to be sha256: and 64 hexadecimal digits')),
      ),
      bytes: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0))),
    }),
  ),
});

/** @throws {ArchiveFault} `newer-version` before anything else is looked at */
export async function readDescription(archive: Packed, entry: ZipEntry): Promise<PackageDescription> {
  const bytes = await readEntry(archive, entry, LARGEST_DESCRIPTION);
  const json = readTaggedJson(textOf(bytes, entry.path));
  if (!json.ok) throw damaged(entry.path, json.fault);
  checkVersion(json.value, entry.path);
  const parsed = v.safeParse(description, json.value);
  if (!parsed.success) {
    const [issue] = parsed.issues;
    throw damaged(entry.path, `${v.getDotPath(issue) ?? 'the whole'}: ${issue.message}`);
  }
  const { created, stillpin, resources } = parsed.output;
  return {
    createdAt: created ?? null,
    programVersion: stillpin.programVersion,
    leftOut: stillpin.leftOut,
    resources: checked(
      resources.map(({ name, path, type, format, hash, bytes: byteCount }) => ({
        name,
        path,
        isTable: type === 'table' || format === 'csv',
        expected: { sha256: hash?.slice('sha256:'.length), byteCount },
      })),
      entry.path,
    ),
  };
}

function textOf(bytes: Uint8Array, path: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    throw damaged(path, 'is not UTF-8');
  }
}

function checkVersion(json: unknown, path: string): void {
  const parsed = v.safeParse(version, json);
  if (!parsed.success) {
    const message = 'does not say stillpin.archiveVersion, so this is some other Data Package';
    throw new ArchiveFault('not-an-archive', { file: path, row: null, column: null, message });
  }
  const { archiveVersion } = parsed.output.stillpin;
  if (archiveVersion <= ARCHIVE_VERSION) return;
  const message = `the archive was written by a newer program (archive version ${archiveVersion}; this program reads up to ${ARCHIVE_VERSION}). Load the newer program and open it there; nothing was changed`;
  throw new ArchiveFault('newer-version', { file: null, row: null, column: null, message });
}

function checked(resources: readonly DescribedFile[], path: string): readonly DescribedFile[] {
  for (const key of ['name', 'path'] as const) {
    const all = resources.map((resource) => resource[key]);
    const double =
      new Set(all).size < all.length ? all.find((value, index) => all.indexOf(value) !== index) : undefined;
    if (double !== undefined) throw damaged(path, `names the resource ${JSON.stringify(double)} twice`);
  }
  for (const resource of resources) {
    const fault = pathFault(resource.path);
    if (fault !== undefined) throw damaged(path, `has ${fault} (${JSON.stringify(resource.path.slice(0, 80))})`);
  }
  return resources;
}

/** Files that computers add by themselves when a folder is packed. */
const ADDED_BY_SYSTEMS = /(^|\/)(__MACOSX\/.*|\.DS_Store|Thumbs\.db|desktop\.ini)$/;

export type PackageFiles = {
  readonly description: ZipEntry;
  /** By their name in the package, whatever folder the package lies in. */
  readonly files: ReadonlyMap<string, ZipEntry>;
};

/** The package may lie in one folder, as where somebody unpacked an archive and packed the folder again. @throws {ArchiveFault} */
export function packageFiles(entries: readonly ZipEntry[]): PackageFiles {
  const own = entries.filter(({ path }) => !ADDED_BY_SYSTEMS.test(path));
  const places = own.filter(({ path }) => path === PACKAGE_FILE || path.endsWith(`/${PACKAGE_FILE}`));
  const description = places.find(({ path }) => path === PACKAGE_FILE) ?? places[0];
  const depth = description?.path.split('/').length ?? 0;
  if (description === undefined || depth > 2 || (depth === 2 && places.length > 1)) {
    const message = `there is no ${PACKAGE_FILE} in it, so it is a ZIP file of something else`;
    throw new ArchiveFault('not-an-archive', { file: null, row: null, column: null, message });
  }
  const folder = description.path.slice(0, -PACKAGE_FILE.length);
  const files = own
    .filter(({ path }) => path.startsWith(folder))
    .map((entry) => [entry.path.slice(folder.length), entry] as const);
  return { description, files: new Map(files) };
}
