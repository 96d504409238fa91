import type { Slip } from '../measure/types';
import type { Yard } from '../yard/types';
import { deriveYard } from './derive';

const scope = globalThis as unknown as {
  postMessage(slips: readonly Slip[]): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<Yard>) => void): void;
};

/** Looks for overlaps and gaps of one yard and answers with them. */
scope.addEventListener('message', (event) => {
  scope.postMessage(deriveYard(event.data).slips());
});
