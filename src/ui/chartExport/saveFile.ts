/** How long the browser may take to begin reading what it was given. */
const HANDED_OVER_MS = 60_000;

/** Hands a file to the browser's own way of saving. */
export function saveFile(content: Blob, fileName: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(address), HANDED_OVER_MS);
}
