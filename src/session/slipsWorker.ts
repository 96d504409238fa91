import { measureYard } from '../measure/measureYard';
import { findSlips } from '../measure/slips';
import type { Slip } from '../measure/types';
import type { Yard } from '../yard/types';

const scope = globalThis as unknown as {
  postMessage(slips: readonly Slip[]): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<Yard>) => void): void;
};

/** Looks for overlaps and gaps of one yard and answers with them. */
scope.addEventListener('message', (event) => {
  scope.postMessage(findSlips(event.data, measureYard(event.data)));
});
