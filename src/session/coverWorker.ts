import { coverOneDose, createCoverCache } from '../cover/coverVisit';
import type { CoverInput, DoseCoverage, VisitCoverage } from '../cover/passTypes';
import { explainFailure } from './coverFailure';

/** What the page asks for. */
export interface CoverRequest {
  readonly id: number;
  readonly input: CoverInput;
}
/** What the worker answers; a request that a newer one overtook is never answered. */
export type CoverAnswer =
  | { readonly id: number; readonly began: true }
  | { readonly id: number; readonly ok: true; readonly coverage: VisitCoverage }
  | {
      readonly id: number;
      readonly ok: false /** a plain sentence for the person. */;
      readonly message: string;
    };

const scope = globalThis as unknown as {
  postMessage(answer: CoverAnswer): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<CoverRequest>) => void): void;
};
const cache = createCoverCache();
let newest = 0;

/** Lays out the walks of a visit off the page's thread, dose by dose, and keeps them for the next time. */
scope.addEventListener('message', ({ data }) => {
  newest = data.id;
  void layOut(data);
});

async function layOut({ id, input }: CoverRequest): Promise<void> {
  const doses: DoseCoverage[] = [];
  for (const dose of input.doses) {
    // lets a newer request be heard
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (id !== newest) return;
    if (doses.length === 0) scope.postMessage({ id, began: true });
    try {
      doses.push(coverOneDose(dose, input, cache));
    } catch {
      scope.postMessage({ id, ok: false, message: explainFailure(input, doses.length) });
      return;
    }
  }
  scope.postMessage({ id, ok: true, coverage: { visitId: input.visitId, doses } });
}
