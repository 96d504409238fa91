import { createPassPlanner } from './passes/passPlanner';
import type { CoverDose, CoverInput, DoseCoverage, VisitCoverage, ZonePasses } from './passTypes';
import { type CoverSite, coverDose } from './route/coverDose';
import type { PlanPasses } from './route/stopPlans';

/** Passes kept: those of a few visits. */
const MOST_PASSES = 1500;
/** Walks of doses kept. */
const MOST_DOSES = 40;

/** What is kept from one laying out to the next: what hangs on the same data is not worked out anew. */
export interface CoverCache {
  /** lays passes over one piece of ground. */
  readonly plan: PlanPasses;
  /** walks of doses by what they hang on. */
  readonly doses: Map<string, DoseCoverage>;
}

/** An empty cache. @param plan what lays passes over one piece of ground */
export function createCoverCache(plan: PlanPasses = createPassPlanner()): CoverCache {
  const kept = new Map<string, ZonePasses>();
  return {
    doses: new Map(),
    plan: (...args) => keepIn(kept, JSON.stringify(args), MOST_PASSES, () => plan(...args)),
  };
}

/** Takes what is kept under a key, else makes and keeps it; what was not asked for longest goes. */
function keepIn<T>(kept: Map<string, T>, key: string, most: number, make: () => T): T {
  const known = kept.get(key);
  const value = known ?? make();
  kept.delete(key);
  kept.set(key, value);
  for (const oldest of kept.keys()) {
    if (kept.size <= most) break;
    kept.delete(oldest);
  }
  return value;
}

/** The walk of one dose; taken from the cache where all that it hangs on is the same. */
export function coverOneDose(dose: CoverDose, input: CoverInput, cache: CoverCache): DoseCoverage {
  const { obstacles, property, start, end, hose, units } = input;
  const site: CoverSite = { obstacles, property, start, end, hose: dose.byHose ? hose : null, units };
  return keepIn(cache.doses, JSON.stringify([dose, site]), MOST_DOSES, () =>
    coverDose(dose, site, cache.plan),
  );
}

/**
 * The walks of one visit, in the yard's plane: each dose is one joined walk over its zones, from start to end where
 * they are told, with ways round obstacles and no-apply strips, and where each bottle, bag, tank load or fill runs out.
 * @param cache of an earlier call, so that only doses that changed are laid out anew
 */
export function coverVisit(input: CoverInput, cache: CoverCache = createCoverCache()): VisitCoverage {
  return {
    visitId: input.visitId,
    doses: input.doses.map((dose) => coverOneDose(dose, input, cache)),
  };
}
