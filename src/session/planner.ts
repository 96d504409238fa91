import type { MeasuredYard } from '../measure/types';
import type { Yard } from '../yard/types';
import type { Derived } from './types';

/** The part of what is derived that plans: visits and the season. */
export type Planned = Pick<Derived, 'visit' | 'season'>;

/** Plans on measured ground. @param previous an earlier plan of the same yard, to take over from */
export type Planner = (yard: Yard, measured: MeasuredYard, previous: Planned | null) => Planned;

let planner: Planner | null = null;

/** Called by the planner's own module when it is loaded. */
export function registerPlanner(loaded: Planner): void {
  planner = loaded;
}

/** The planner; null until it is loaded. */
export function currentPlanner(): Planner | null {
  return planner;
}

/**
 * Fetches what plans visits and the season: measuring does without it, so it is no part of the first load.
 * Afterwards `Derived.visit` and `Derived.season` answer. In Node a plain import of `deriveVisit` does the same.
 * Rejects when it cannot be fetched; may be called again.
 */
export async function loadPlanner(): Promise<void> {
  await import('./deriveVisit');
}
