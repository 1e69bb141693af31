/** What a worker's global scope offers; the rest of the program is compiled for pages, where `postMessage` has another shape. */
export type WorkerScope<Report> = {
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
  readonly postMessage: (report: Report, transfer?: Transferable[]) => void;
};
