import { rinseEdges, type TreatedReach } from '../cover/rinse';
import { type StripSource, sourcesNear, stripSources } from '../cover/sources';
import { treatZone } from '../cover/strips';
import type { RinseEdge, TreatedZone } from '../cover/types';
import { areaScale } from '../measure/areaScale';
import { intersectionOf, planeAreaOf } from '../measure/clip';
import { LEAST_SLIP_M2 } from '../measure/slips';
import { type Clash, clashesOf } from '../measure/totals';
import type { MeasuredYard, MeasuredZone } from '../measure/types';
import { sigmaOfGradients } from '../measure/uncertainty';
import { isSprayed } from '../plan/sprayRate';
import type { DoseFigures, TreatableZone } from '../plan/types';
import { planVisit, type VisitInput } from '../plan/visit';
import { seasonFigures } from '../season/seasonFigures';
import type { SeasonFigures } from '../season/types';
import { visitZones } from '../yard/choose';
import type { Issue, Product, ProductForm, Visit, Yard, Zone } from '../yard/types';
import { type Kept, keep } from './keep';
import { type Planned, registerPlanner } from './planner';
import type { DerivedVisit } from './types';

type Treated = ReturnType<typeof treatZone>;

/** What one plan leaves for the next. */
interface Cache {
  readonly treated: Map<string, Kept<Treated>>;
  readonly rinse: Map<string, Kept<readonly RinseEdge[]>>;
  /** by visit, then by the ids of the zones that a dose treats. */
  readonly sigmas: Map<string, ReadonlyMap<string, Kept<number>>>;
  readonly visits: Map<string, Kept<DerivedVisit>>;
  season: Kept<SeasonFigures> | null;
}
const caches = new WeakMap<Planned, Cache>();

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
 * Visits and season of a measured yard, each derived at the first call and kept. What came from the same
 * objects as in `previous` is taken over from there.
 */
export function planYard(yard: Yard, measured: MeasuredYard, previous: Planned | null): Planned {
  const before = previous === null ? undefined : caches.get(previous);
  const cache: Cache = {
    treated: stillThere(before?.treated, yard.zones),
    rinse: stillThere(before?.rinse, yard.visits),
    sigmas: stillThere(before?.sigmas, yard.visits),
    visits: stillThere(before?.visits, yard.visits),
    season: before?.season ?? null,
  };
  const planned: Planned = {
    visit(visitId) {
      const visit = yard.visits.find((one) => one.id === visitId);
      if (visit === undefined) return null;
      const { visits, zones, marks, products, settings, soilTests, overrides, rules, caps } = yard;
      const from = [visit, visits, zones, marks, products, settings, soilTests, overrides, rules, caps];
      const kept = keep(cache.visits.get(visitId), [...from, measured.plane], () =>
        deriveVisit(yard, visit, measured, cache),
      );
      cache.visits.set(visitId, kept);
      return kept.value;
    },
    season() {
      const figures = yard.visits.flatMap((visit) => planned.visit(visit.id)?.figures ?? []);
      const { zones, soilTests, needs, climate, programs, caps, rules, overrides, settings } = yard;
      const from = [...figures, zones, soilTests, needs, climate, programs, caps, rules, overrides, settings];
      cache.season = keep(cache.season, from, () => seasonFigures(yard, figures));
      return cache.season.value;
    },
  };
  caches.set(planned, cache);
  return planned;
}

registerPlanner(planYard);

function deriveVisit(yard: Yard, visit: Visit, measured: MeasuredYard, cache: Cache): DerivedVisit {
  const treated = new Map<string, TreatedZone>();
  const issues: Issue[] = [];
  const zonesByDose = new Map<string, TreatableZone[]>();
  const sigmaByDose = new Map<string, number>();
  const sigmas = new Map<string, Kept<number>>();
  const sources = stripSources(yard, measured.plane);

  for (const dose of visit.doses) {
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
      const { areaM2, stripM2 } = ground;
      rows.push({ zoneId: zone.id, name: zone.name, areaM2, stripM2, isPlaced: zone.isPlaced });
    }
    zonesByDose.set(dose.id, rows);
    const grounds = rows.flatMap((row) => treated.get(row.zoneId) ?? []);
    const key = rows.map((row) => row.zoneId).join(' ');
    const { elevationM } = yard.settings;
    const sigma = keep(
      sigmas.get(key) ?? cache.sigmas.get(visit.id)?.get(key),
      [elevationM, ...grounds],
      () => sigmaOfGrounds(grounds, elevationM),
    );
    sigmas.set(key, sigma);
    sigmaByDose.set(dose.id, sigma.value);
  }
  cache.sigmas.set(visit.id, sigmas);
  const clashes = clashesOfTreated(yard, clashesOf(yard.zones, measured), treated);
  const areaOfDose: NonNullable<VisitInput['areaOfDose']> = (other, dose) =>
    visitZones(yard, other, dose).reduce((sum, zone) => {
      const own = measured.zones.get(zone.id);
      return own ? sum + treatKept(yard, zone, own, sources, measured, cache).treated.areaM2 : sum;
    }, 0);
  const figures = planVisit({ yard, visit, zonesByDose, sigmaByDose, clashes, areaOfDose });
  const productsByZone = productsOn(figures.doses);
  return {
    figures,
    treated,
    rinseEdges: rinseKept(yard, visit, measured, treated, productsByZone, sources, cache),
    issues,
  };
}

/** What goes out on each zone, as the uses of the doses have it; doses that cannot go out are none of it. */
function productsOn(doses: readonly DoseFigures[]): ReadonlyMap<string, readonly Product[]> {
  const byZone = new Map<string, Product[]>();
  for (const { product, zones } of doses)
    for (const { zoneId } of zones) byZone.set(zoneId, [...(byZone.get(zoneId) ?? []), product]);
  return byZone;
}

/** One standard deviation of the ground of a dose, m². Corners that its zones share err together. */
function sigmaOfGrounds(grounds: readonly TreatedZone[], elevationM: number | null): number {
  const [only] = grounds;
  if (only && grounds.length === 1) return only.areaSigmaM2;
  return sigmaOfGradients(
    grounds.map((ground) => ground.gradient),
    Math.sqrt(areaScale(elevationM)),
  );
}

/** Ground that two zones of one kind would both have treated: what they both claim less their strips. */
function clashesOfTreated(
  yard: Yard,
  clashes: readonly Clash[],
  treated: ReadonlyMap<string, TreatedZone>,
): NonNullable<VisitInput['clashes']> {
  const scale = areaScale(yard.settings.elevationM);
  return clashes.flatMap(({ a, b, overlap }) => {
    const [one, other] = [treated.get(a.zoneId), treated.get(b.zoneId)];
    if (!one || !other) return [];
    const isWhole = one.strips.length === 0 && other.strips.length === 0;
    const planeM2 = isWhole
      ? overlap.planeAreaM2
      : planeAreaOf(intersectionOf(one.planeParts, other.planeParts));
    return planeM2 >= LEAST_SLIP_M2 ? [[a.zoneId, b.zoneId, scale * planeM2]] : [];
  });
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
  const near = zone.isPlaced ? sourcesNear(sources, measuredZone.netPlaneParts) : [];
  const from = [zone, measuredZone, yard.settings.doseBySurface, ...near];
  const kept = keep(cache.treated.get(zone.id), from, () =>
    treatZone(measuredZone, zone, yard, measured.plane),
  );
  cache.treated.set(zone.id, kept);
  return kept.value;
}

/** Forms that lie loose on hardscape: swept or blown back before any rinsing. */
const LOOSE_FORMS: readonly ProductForm[] = ['granular', 'seed', 'mulch', 'topdressing', 'soil-amendment'];

/** What is spread dry; what is poured or dissolved is rinsed like any liquid. */
function liesLoose(product: Product): boolean {
  return !isSprayed(product) && (LOOSE_FORMS.includes(product.form) || product.applicator !== null);
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
    const own = zone.kind === 'hardscape' && zone.isPlaced ? measured.zones.get(zone.id) : undefined;
    return own === undefined ? [] : { zone, measured: own };
  });
  const unplaced = new Set(yard.zones.flatMap((zone) => (zone.isPlaced ? [] : zone.id)));
  const grounds = [...productsByZone].flatMap(([zoneId, products]): TreatedReach | [] => {
    const zone = treated.get(zoneId);
    if (zone === undefined || unplaced.has(zoneId)) return [];
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
