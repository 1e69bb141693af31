/** The one take worker for odd jobs of the page: sounds of takes, one take measured again. It lives as long as the page. */
import { openTakeWorker, type TakeAsker, type TakeWorker } from './askTakeWorker.ts';

let shared: TakeWorker | undefined;

export function sharedTakeWorker(): TakeAsker {
  shared ??= openTakeWorker(() => {
    shared = undefined;
  });
  return shared;
}
