/** The part of the File System Access specification (WICG) that some browsers have and TypeScript's own types lack. */

export type FolderPermission = 'granted' | 'denied' | 'prompt';

export type Folder = FileSystemDirectoryHandle & {
  queryPermission?(wish: { mode: 'readwrite' }): Promise<FolderPermission>;
  requestPermission?(wish: { mode: 'readwrite' }): Promise<FolderPermission>;
  values(): AsyncIterable<FileSystemHandle>;
};

type FileAccess = {
  showDirectoryPicker?(wish: { mode: 'readwrite'; id?: string }): Promise<Folder>;
  showSaveFilePicker?(wish: {
    suggestedName: string;
    types: { description: string; accept: Record<string, string[]> }[];
  }): Promise<FileSystemFileHandle>;
};

const access = (): FileAccess => window as unknown as FileAccess;

export function canChooseFolder(): boolean {
  return access().showDirectoryPicker !== undefined;
}

/** Null where the user closed the dialog. @param purpose lets the browser open the folder chosen for it the last time */
export async function chooseFolder(purpose: string): Promise<Folder | null> {
  return nullIfClosed(() => access().showDirectoryPicker?.({ mode: 'readwrite', id: purpose }));
}

export function canChooseFile(): boolean {
  return access().showSaveFilePicker !== undefined;
}

/** Null where the user closed the dialog. */
export function chooseFile(suggestedName: string, description: string): Promise<FileSystemFileHandle | null> {
  const types = [{ description, accept: { 'application/zip': ['.zip'] } }];
  return nullIfClosed(() => access().showSaveFilePicker?.({ suggestedName, types }));
}

/** Whether the page may write into a folder that was chosen before; asks where `isAsking`, which needs a press of a button. */
export async function mayWrite(folder: Folder, isAsking: boolean): Promise<boolean> {
  const wish = { mode: 'readwrite' } as const;
  if ((await folder.queryPermission?.(wish)) === 'granted' || !folder.queryPermission) return true;
  return isAsking && (await folder.requestPermission?.(wish)) === 'granted';
}

export function isFolder(value: unknown): value is Folder {
  return typeof value === 'object' && value !== null && 'kind' in value && value.kind === 'directory';
}

async function nullIfClosed<Value>(choose: () => Promise<Value> | undefined): Promise<Value | null> {
  try {
    return (await choose()) ?? null;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
