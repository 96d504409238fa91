import { measureYard } from '../measure/measureYard';
import { findSlips } from '../measure/slips';
import type { MeasuredYard, Slip } from '../measure/types';
import type { SeasonFigures } from '../season/types';
import type { Yard } from '../yard/types';
import { type Kept, keep } from './keep';
import { currentPlanner, type Planned } from './planner';
import type { Derived } from './types';

/** What one derivation leaves for the next. */
interface Cache {
  slips: Kept<readonly Slip[]> | null;
  /** the plan of this very document; null until it is asked for. */
  planned: Planned | null;
  /** the last plan made of an earlier document. */
  readonly plannedBefore: Planned | null;
}
const caches = new WeakMap<Derived, Cache>();
const NO_SEASON: SeasonFigures = { entries: [], issues: [] };

/**
 * Everything shown, derived from a document. Areas are measured at once; slips, visits and season at the
 * first call, and kept. What came from the same objects as in `previous` is taken over from there.
 * Visits and season are there once the planner is loaded (`loadPlanner`).
 */
export function deriveYard(yard: Yard, previous?: Derived): Derived {
  if (previous?.yard === yard) return previous;
  const before = previous && caches.get(previous);
  const cache: Cache = {
    slips: before?.slips ?? null,
    planned: null,
    plannedBefore: before?.planned ?? before?.plannedBefore ?? null,
  };
  const measured = measureAgain(yard, previous);
  const plan = (): Planned | null => {
    cache.planned ??= currentPlanner()?.(yard, measured, cache.plannedBefore) ?? null;
    return cache.planned;
  };
  const derived: Derived = {
    yard,
    measured,
    slips() {
      cache.slips = keep(cache.slips, groundOf(yard, measured), () => findSlips(yard, measured));
      return cache.slips.value;
    },
    visit: (visitId) => plan()?.visit(visitId) ?? null,
    season: () => plan()?.season() ?? NO_SEASON,
  };
  caches.set(derived, cache);
  return derived;
}

/** Takes slips that were found elsewhere, in a worker, for this very yard: they are not looked for again. */
export function offerSlips(derived: Derived, slips: readonly Slip[]): void {
  const cache = caches.get(derived);
  if (cache) cache.slips = { from: groundOf(derived.yard, derived.measured), value: slips };
}

/** Zones, marks and elevation decide what is measured: the last result itself while they are the same. */
function measureAgain(yard: Yard, previous: Derived | undefined): MeasuredYard {
  const before = previous?.yard;
  const isSame =
    before?.zones === yard.zones &&
    before.marks === yard.marks &&
    before.settings.elevationM === yard.settings.elevationM;
  return previous && isSame ? previous.measured : measureYard(yard, previous?.measured);
}

/** All that decides the slips: outlines and what cuts what, not the zones' names. */
function groundOf({ zones, settings }: Yard, { plane }: MeasuredYard): readonly unknown[] {
  return [
    plane,
    settings.gapToleranceM,
    settings.elevationM,
    ...zones.flatMap((zone) => [zone.id, zone.kind, zone.cutsSameKind, zone.parts]),
  ];
}
