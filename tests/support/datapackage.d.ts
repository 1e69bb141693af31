/** As much of the package as is used here; it brings no types of its own. */
declare module 'datapackage' {
  export type PackageResource = {
    readonly name: string;
    readonly tabular: boolean;
    readonly valid: boolean;
    /** Rejects with what is wrong with the rows; with `relations` also where a foreign key leads nowhere. */
    read(options: { keyed: true; relations: true }): Promise<Record<string, unknown>[]>;
  };
  export type LoadedPackage = {
    readonly valid: boolean;
    readonly errors: readonly Error[];
    readonly resources: readonly PackageResource[];
  };
  export const Package: { load(descriptor: unknown, options: { basePath: string }): Promise<LoadedPackage> };
}
