import { rinseEdges, type TreatedReach } from '../cover/rinse';
import { type StripSource, sourcesNear, stripSources } from '../cover/sources';
import { treatZone } from '../cover/strips';
import type { RinseEdge, TreatedZone } from '../cover/types';
import { measureYard } from '../measure/measureYard';
import { findSlips } from '../measure/slips';
import type { MeasuredYard, MeasuredZone, Slip } from '../measure/types';
import { sigmaOfZones } from '../measure/uncertainty';
import { isLiquid } from '../plan/rate';
import type { TreatableZone } from '../plan/types';
import { planVisit } from '../plan/visit';
import { visitZones } from '../yard/choose';
import type { Issue, Product, ProductForm, Visit, Yard, Zone } from '../yard/types';
import type { Derived, DerivedVisit } from './types';

/** A result with the objects it came from: good while every one of them is the same. */
interface Kept<T> {
  readonly from: readonly unknown[];
  readonly value: T;
}
type Treated = ReturnType<typeof treatZone>;

/** What one derivation leaves for the next. */
interface Cache {
  slips: Kept<readonly Slip[]> | null;
  readonly treated: Map<string, Kept<Treated>>;
  readonly rinse: Map<string, Kept<readonly RinseEdge[]>>;
  /** by visit, then by the ids of the zones that a dose treats. */
  readonly sigmas: Map<string, ReadonlyMap<string, Kept<number>>>;
  readonly visits: Map<string, Kept<DerivedVisit>>;
}
const caches = new WeakMap<Derived, Cache>();

function keep<T>(kept: Kept<T> | null | undefined, from: readonly unknown[], make: () => T): Kept<T> {
  const same = kept?.from.length === from.length && kept.from.every((item, i) => item === from[i]);
  return kept && same ? kept : { from, value: make() };
}

/** What was kept for zones or visits that the yard still has. */
function stillThere<T>(
  kept: ReadonlyMap<string, T> | undefined,
  items: readonly { readonly id: string }[],
): Map<string, T> {
  const next = new Map<string, T>();
  for (const { id } of kept === undefined ? [] : items) {
    const value = kept?.get(id);
    if (value !== undefined) next.set(id, value);
  }
  return next;
}

/**
 * Everything shown, derived from a document. Areas are measured at once; slips and visits at the
 * first call, and kept. What came from the same objects as in `previous` is taken over from there.
 */
export function deriveYard(yard: Yard, previous?: Derived): Derived {
  if (previous?.yard === yard) return previous;
  const before = previous && caches.get(previous);
  const cache: Cache = {
    slips: before?.slips ?? null,
    treated: stillThere(before?.treated, yard.zones),
    rinse: stillThere(before?.rinse, yard.visits),
    sigmas: stillThere(before?.sigmas, yard.visits),
    visits: stillThere(before?.visits, yard.visits),
  };
  const measured = measureYard(yard, previous?.measured);
  const derived: Derived = {
    yard,
    measured,
    slips() {
      cache.slips = keep(cache.slips, [yard.zones, yard.settings.gapToleranceM, measured], () =>
        findSlips(yard, measured),
      );
      return cache.slips.value;
    },
    visit(visitId) {
      const visit = yard.visits.find((one) => one.id === visitId);
      if (visit === undefined) return null;
      const from = [
        visit,
        yard.visits,
        yard.zones,
        yard.marks,
        yard.products,
        yard.settings.strips,
        measured,
      ];
      const kept = keep(cache.visits.get(visitId), from, () => deriveVisit(yard, visit, measured, cache));
      cache.visits.set(visitId, kept);
      return kept.value;
    },
  };
  caches.set(derived, cache);
  return derived;
}

function deriveVisit(yard: Yard, visit: Visit, measured: MeasuredYard, cache: Cache): DerivedVisit {
  const treated = new Map<string, TreatedZone>();
  const issues: Issue[] = [];
  const zonesByDose = new Map<string, TreatableZone[]>();
  const sigmaByDose = new Map<string, number>();
  const sigmas = new Map<string, Kept<number>>();
  const productsByZone = new Map<string, Product[]>();
  const sources = stripSources(yard, measured.plane);

  for (const dose of visit.doses) {
    const product = yard.products.find((one) => one.id === dose.productId);
    const rows: TreatableZone[] = [];
    for (const zone of visitZones(yard, visit, dose)) {
      const measuredZone = measured.zones.get(zone.id);
      if (measuredZone === undefined) continue;
      let ground = treated.get(zone.id);
      if (ground === undefined) {
        const result = treatKept(yard, zone, measuredZone, sources, measured, cache);
        ground = result.treated;
        issues.push(...result.issues);
        treated.set(zone.id, ground);
      }
      rows.push({ zoneId: zone.id, name: zone.name, areaM2: ground.areaM2, stripM2: ground.stripM2 });
      if (product !== undefined) {
        productsByZone.set(zone.id, [...(productsByZone.get(zone.id) ?? []), product]);
      }
    }
    zonesByDose.set(dose.id, rows);
    const ids = rows.map((row) => row.zoneId);
    const key = ids.join(' ');
    const netSigma = keep(
      sigmas.get(key) ?? cache.sigmas.get(visit.id)?.get(key),
      ids.map((id) => measured.zones.get(id)),
      () => sigmaOfZones(measured, ids),
    );
    sigmas.set(key, netSigma);
    sigmaByDose.set(dose.id, sigmaLeft(rows, netSigma.value));
  }
  cache.sigmas.set(visit.id, sigmas);
  return {
    figures: planVisit({ yard, visit, zonesByDose, sigmaByDose }),
    treated,
    rinseEdges: rinseKept(yard, visit, measured, treated, productsByZone, sources, cache),
    issues,
  };
}

/**
 * One standard deviation of the ground of a dose, m². Corners shared by its zones err together, so
 * `netSigmaM2` is that of their summed net area; strips take their share off as for one zone (treatZone).
 */
function sigmaLeft(rows: readonly TreatableZone[], netSigmaM2: number): number {
  const leftM2 = rows.reduce((sum, row) => sum + row.areaM2, 0);
  const netM2 = rows.reduce((sum, row) => sum + row.areaM2 + row.stripM2, 0);
  return netM2 > 0 ? netSigmaM2 * Math.sqrt(leftM2 / netM2) : 0;
}

/** A zone less its strips: depends on its net shape (plane and elevation in it) and the sources that may reach it. */
function treatKept(
  yard: Yard,
  zone: Zone,
  measuredZone: MeasuredZone,
  sources: readonly StripSource[],
  measured: MeasuredYard,
  cache: Cache,
): Treated {
  const from = [zone, measuredZone, ...sourcesNear(sources, measuredZone.netPlaneParts)];
  const kept = keep(cache.treated.get(zone.id), from, () =>
    treatZone(measuredZone, zone, yard, measured.plane, measured),
  );
  cache.treated.set(zone.id, kept);
  return kept.value;
}

/** Forms that lie loose on hardscape: swept or blown back before any rinsing. */
const LOOSE_FORMS: readonly ProductForm[] = ['granular', 'seed', 'mulch', 'topdressing', 'soil-amendment'];

/** A soil amendment that is poured is rinsed like any liquid. */
function liesLoose(product: Product): boolean {
  return LOOSE_FORMS.includes(product.form) && !isLiquid(product);
}

function rinseKept(
  yard: Yard,
  visit: Visit,
  measured: MeasuredYard,
  treated: ReadonlyMap<string, TreatedZone>,
  productsByZone: ReadonlyMap<string, readonly Product[]>,
  sources: readonly StripSource[],
  cache: Cache,
): readonly RinseEdge[] {
  const hardscapes = yard.zones.flatMap((zone) => {
    const own = zone.kind === 'hardscape' ? measured.zones.get(zone.id) : undefined;
    return own === undefined ? [] : { zone, measured: own };
  });
  const grounds = [...productsByZone].flatMap(([zoneId, products]): TreatedReach | [] => {
    const zone = treated.get(zoneId);
    if (zone === undefined) return [];
    return {
      zone,
      spreadM: Math.max(...products.map((product) => product.spreadDistanceM)),
      treatment: products.some(liesLoose) ? 'sweep-then-rinse' : 'rinse-toward-turf',
      stains: products.some((product) => product.stainsHardscape),
    };
  });
  const from = [
    measured.plane,
    ...sources,
    ...grounds.flatMap((ground) => [ground.zone, ground.spreadM, ground.treatment, ground.stains]),
    ...hardscapes.flatMap((hardscape) => [hardscape.zone, hardscape.measured]),
  ];
  const kept = keep(cache.rinse.get(visit.id), from, () =>
    rinseEdges({ treated: grounds, hardscapes, sources, plane: measured.plane }),
  );
  cache.rinse.set(visit.id, kept);
  return kept.value;
}
