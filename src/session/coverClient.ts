import type { CoverCache } from '../cover/coverVisit';
import type { CoverInput, DoseCoverage, VisitCoverage } from '../cover/passTypes';
import { explainFailure, NOT_STARTED } from './coverFailure';
import type { CoverAnswer, CoverRequest } from './coverWorker';

/** What the client needs of a worker. */
export interface CoverPort {
  postMessage(request: CoverRequest): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<CoverAnswer>) => void): void;
  addEventListener(type: 'error', listener: (event: ErrorEvent) => void): void;
  terminate(): void;
}

/** Lays out walks, one visit at a time. */
export interface CoverClient {
  /**
   * Walks of a visit. A newer call makes an older one stale: that one is never settled.
   * Rejects with a message for the person when it cannot be done.
   */
  lay(input: CoverInput): Promise<VisitCoverage>;
  /** Ends the worker at once. */
  close(): void;
}

/** For so long a worker may stay with a stale request before it is ended, ms; its kept work is worth that much. */
const PATIENCE_MS = 400;

interface Waiting {
  readonly request: CoverRequest;
  resolve(coverage: VisitCoverage): void;
  reject(error: Error): void;
}

/**
 * A client of its own.
 * @param startWorker null: there are no workers (Node), walks are laid out in place
 */
export function createCoverClient(
  startWorker: (() => CoverPort) | null,
  now: () => number = () => performance.now(),
): CoverClient {
  let port: CoverPort | null = null;
  let lastId = 0;
  /** the newest request, until it is settled. */
  let waiting: Waiting | null = null;
  /** since when the worker is at a request that is stale; null: it is not. */
  let staleSince: number | null = null;
  /** the worker has answered before: it runs. */
  let hasBegun = false;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let cache: CoverCache | null = null;

  const settleDown = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    staleSince = null;
  };
  const stop = (): void => {
    settleDown();
    port?.terminate();
    port = null;
  };
  const fail = (message: string): void => {
    const asked = waiting;
    waiting = null;
    stop();
    asked?.reject(new Error(message));
  };
  const hear = (answer: CoverAnswer): void => {
    if (waiting?.request.id !== answer.id) return;
    settleDown();
    hasBegun = true;
    if ('began' in answer) return;
    const asked = waiting;
    waiting = null;
    if (answer.ok) asked.resolve(answer.coverage);
    else asked.reject(new Error(answer.message));
  };
  const send = (make: () => CoverPort, request: CoverRequest): void => {
    try {
      port ??= start(make);
      port.postMessage(request);
    } catch {
      fail(NOT_STARTED);
    }
  };
  const start = (make: () => CoverPort): CoverPort => {
    const made = make();
    hasBegun = false;
    made.addEventListener('message', ({ data }) => {
      if (made === port) hear(data);
    });
    made.addEventListener('error', (event) => {
      event.preventDefault();
      // what the browser says there is about the program, nothing for the person
      if (made === port) fail(waiting && hasBegun ? explainFailure(waiting.request.input, -1) : NOT_STARTED);
    });
    return made;
  };

  const layInPlace = async (input: CoverInput): Promise<VisitCoverage> => {
    const { coverOneDose, createCoverCache } = await import('../cover/coverVisit');
    const kept = cache ?? createCoverCache();
    cache = kept;
    const doses = input.doses.map((dose, i): DoseCoverage => {
      try {
        return coverOneDose(dose, input, kept);
      } catch (cause) {
        throw new Error(explainFailure(input, i), { cause });
      }
    });
    return { visitId: input.visitId, doses };
  };

  return {
    async lay(input) {
      if (!startWorker) {
        return layInPlace(input);
      }
      lastId += 1;
      const request = { id: lastId, input };
      return new Promise((resolve, reject) => {
        const isBusy = waiting !== null;
        waiting = { request, resolve, reject };
        if (!isBusy) {
          send(startWorker, request);
          return;
        }
        staleSince ??= now();
        const leftMs = PATIENCE_MS - (now() - staleSince);
        if (timer !== null) clearTimeout(timer);
        timer = setTimeout(
          () => {
            stop();
            if (waiting) send(startWorker, waiting.request);
          },
          Math.max(0, leftMs),
        );
        send(startWorker, request);
      });
    },
    close: stop,
  };
}

let shared: CoverClient | null = null;

/**
 * Walks of a visit, laid out in the page's one worker for it; without workers, in place. A newer call makes an
 * older one stale: that one is never settled. Rejects with a message for the person.
 */
export function lay(input: CoverInput): Promise<VisitCoverage> {
  shared ??= createCoverClient(
    typeof Worker === 'undefined'
      ? null
      : () => new Worker(new URL('./coverWorker.ts', import.meta.url), { type: 'module' }),
  );
  return shared.lay(input);
}
