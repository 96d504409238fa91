import type {
  BuildOptions,
  BuiltBatch,
  DeskContext,
  DeskCounts,
  DeskFilter,
  DeskOverview,
  DeskPage,
  DeskSketch,
} from './deskTypes';
import type { ImportRules, NamedFile, TargetKind } from './importTypes';
import type { DeskMethod, WorkerAnswer, WorkerRequest } from './importWorker';

/** The desk in its worker, as the page sees it. Every question is answered in a later task. */
export interface ImportClient {
  open(files: readonly NamedFile[]): Promise<DeskOverview>;
  setRules(change: Partial<ImportRules>): Promise<DeskOverview>;
  list(filter: DeskFilter, offset: number, limit: number): Promise<DeskPage>;
  tick(which: number | DeskFilter, isOn: boolean): Promise<DeskCounts>;
  edit(which: number | DeskFilter, change: { name?: string; kind?: TargetKind }): Promise<DeskCounts>;
  sketch(filter: DeskFilter, widthPx: number, heightPx: number): Promise<DeskSketch>;
  findCrs(words: string): Promise<readonly { readonly code: string; readonly name: string }[]>;
  startBuild(): Promise<number>;
  nextBatch(options: BuildOptions): Promise<BuiltBatch>;
  /** Ends the worker at once, whatever it is doing; questions under way are never answered. */
  close(): void;
}

/**
 * Starts a worker for one import.
 * @param onProgress share of the work done, 0 to 1, and what is being done
 */
export function createImportClient(
  context: DeskContext,
  onProgress: (share: number, words: string) => void,
): ImportClient {
  const worker = new Worker(new URL('./importWorker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, { resolve(value: unknown): void; reject(error: Error): void }>();
  let lastId = 0;
  worker.addEventListener('message', (event: MessageEvent<WorkerAnswer>) => {
    const answer = event.data;
    if ('progress' in answer) {
      onProgress(answer.progress, answer.words);
      return;
    }
    const asked = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (answer.ok) asked?.resolve(answer.value);
    else asked?.reject(new Error(answer.message));
  });
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    for (const asked of waiting.values())
      asked.reject(new Error(event.message || 'the reader could not be started'));
    waiting.clear();
  });
  const send = <T>(make: (id: number) => WorkerRequest): Promise<T> =>
    new Promise<T>((resolve, reject) => {
      lastId += 1;
      waiting.set(lastId, { resolve: resolve as (value: unknown) => void, reject });
      worker.postMessage(make(lastId));
    });
  const ask = <T>(method: DeskMethod, ...args: readonly unknown[]) => send<T>((id) => ({ id, method, args }));
  return {
    open: (files) => send((id) => ({ id, method: 'open', context, files })),
    setRules: (change) => ask('setRules', change),
    list: (filter, offset, limit) => ask('list', filter, offset, limit),
    tick: (which, isOn) => ask('tick', which, isOn),
    edit: (which, change) => ask('edit', which, change),
    sketch: (filter, widthPx, heightPx) => ask('sketch', filter, widthPx, heightPx),
    findCrs: (words) => ask('findCrs', words),
    startBuild: () => ask('startBuild'),
    nextBatch: (options) => ask('nextBatch', options),
    close: () => worker.terminate(),
  };
}
