import type { Slip } from '../measure/types';
import type { Yard } from '../yard/types';

/**
 * Looks for overlaps and gaps in a worker, so that the page does not stand still over a large yard.
 * @returns them, or null when the worker cannot be had; `stop` ends it without an answer
 */
export function findSlipsAside(yard: Yard): {
  readonly found: Promise<readonly Slip[] | null>;
  stop(): void;
} {
  const worker = new Worker(new URL('./slipsWorker.ts', import.meta.url), { type: 'module' });
  const found = new Promise<readonly Slip[] | null>((resolve) => {
    worker.addEventListener('message', (event: MessageEvent<readonly Slip[]>) => resolve(event.data));
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      resolve(null);
    });
  }).finally(() => worker.terminate());
  // the ground alone is needed
  worker.postMessage({ ...yard, products: [], visits: [], extra: {} });
  return { found, stop: () => worker.terminate() };
}
