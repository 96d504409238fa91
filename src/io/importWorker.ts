import type { DeskContext } from './deskTypes';
import { ImportDesk } from './importDesk';
import type { NamedFile } from './importTypes';

/** What the page sends: first `open`, then questions by the name of a method of the desk. */
export type WorkerRequest =
  | {
      readonly id: number;
      readonly method: 'open';
      readonly context: DeskContext;
      readonly files: readonly NamedFile[];
    }
  | { readonly id: number; readonly method: DeskMethod; readonly args: readonly unknown[] };
/** Methods of the desk that the page may call. */
export type DeskMethod =
  | 'setRules'
  | 'list'
  | 'tick'
  | 'edit'
  | 'findCrs'
  | 'sketch'
  | 'startBuild'
  | 'nextBatch';
/** What the worker answers. */
export type WorkerAnswer =
  | { readonly id: number; readonly ok: true; readonly value: unknown }
  | { readonly id: number; readonly ok: false; readonly message: string }
  | { readonly progress: number; readonly words: string };

/** Reports of progress are at least so far apart, ms. */
const PROGRESS_MS = 100;

let desk: ImportDesk | null = null;
let lastReport = 0;
const scope = globalThis as unknown as {
  postMessage(answer: WorkerAnswer): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<WorkerRequest>) => void): void;
};

/** Keeps the features of the dropped files off the page's thread. It is ended by `terminate`. */
scope.addEventListener('message', (event) => {
  const request = event.data;
  run(request).then(
    (value) => scope.postMessage({ id: request.id, ok: true, value }),
    (error: unknown) => {
      const message = error instanceof Error ? error.message : String(error);
      scope.postMessage({ id: request.id, ok: false, message });
    },
  );
});

async function run(request: WorkerRequest): Promise<unknown> {
  if (request.method === 'open') {
    desk = new ImportDesk(request.context, report);
    return desk.open(request.files);
  }
  if (!desk) throw new Error('no file is open');
  const method = desk[request.method] as (...args: readonly unknown[]) => unknown;
  return method.apply(desk, [...request.args]);
}

function report(progress: number, words: string): void {
  const now = performance.now();
  if (now - lastReport < PROGRESS_MS) return;
  lastReport = now;
  scope.postMessage({ progress: Math.min(1, progress), words });
}
