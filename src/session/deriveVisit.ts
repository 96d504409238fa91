import { rinseEdges, type TreatedReach } from '../cover/rinse';
import { type StripSource, sourcesNear, stripSources } from '../cover/sources';
import { spreadOf } from '../cover/spread';
import { treatZone } from '../cover/strips';
import type { RinseEdge, TreatedZone } from '../cover/types';
import { areaScale } from '../measure/areaScale';
import { intersectionOf, planeAreaOf } from '../measure/clip';
import { LEAST_SLIP_M2 } from '../measure/slips';
import { type Clash, clashesOf } from '../measure/totals';
import type { MeasuredYard, MeasuredZone, XY } from '../measure/types';
import { sigmaOfGradients } from '../measure/uncertainty';
import { equipmentOfDose } from '../plan/equipmentOfDose';
import { visitsHeldWith } from '../plan/heldWith';
import { holdVisit } from '../plan/holdVisit';
import { isStaining } from '../plan/isStaining';
import { isSprayed } from '../plan/sprayRate';
import { statesStock } from '../plan/stockIssues';
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
  /** by the ids of the zones that a dose treats. */
  readonly sigmas: Map<string, Kept<number>>;
  /** visits planned by themselves. */
  readonly alone: Map<string, Kept<DerivedVisit>>;
  /** the same held together with other visits. */
  readonly visits: Map<string, Kept<DerivedVisit>>;
  season: Kept<SeasonFigures> | null;
}
const caches = new WeakMap<Planned, Cache>();

/** Sets of zones whose error is kept; more are dropped, as a yard seldom has that many. */
const MOST_SIGMAS = 500;

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

/** What visits of one plan share: the measured yard, and what is worked out once for all of them. */
interface Ground {
  readonly yard: Yard;
  readonly measured: MeasuredYard;
  readonly cache: Cache;
  sources(): readonly StripSource[];
  clashes(): readonly Clash[];
  /** a zone less its strips. */
  treat(zone: Zone, measuredZone: MeasuredZone): Treated;
}

function groundOf(yard: Yard, measured: MeasuredYard, cache: Cache): Ground {
  let sources: readonly StripSource[] | null = null;
  let clashes: readonly Clash[] | null = null;
  const treated = new Map<string, Treated>();
  const ground: Ground = {
    yard,
    measured,
    cache,
    sources() {
      sources ??= stripSources(yard, measured.plane);
      return sources;
    },
    clashes() {
      clashes ??= clashesOf(yard.zones, measured);
      return clashes;
    },
    treat(zone, measuredZone) {
      const known = treated.get(zone.id);
      if (known !== undefined) return known;
      const made = treatKept(ground, zone, measuredZone);
      treated.set(zone.id, made);
      return made;
    },
  };
  return ground;
}

/**
 * Visits and season of a measured yard, each derived at the first call and kept. What came from the same
 * objects as in `previous` is taken over from there: a visit is planned by itself from its own labels and
 * ground, then held together with those of its day and those that its labels' limits reach.
 */
export function planYard(yard: Yard, measured: MeasuredYard, previous: Planned | null): Planned {
  const before = previous === null ? undefined : caches.get(previous);
  const cache: Cache = {
    treated: stillThere(before?.treated, yard.zones),
    rinse: stillThere(before?.rinse, yard.visits),
    sigmas: new Map((before?.sigmas.size ?? 0) > MOST_SIGMAS ? [] : before?.sigmas),
    alone: stillThere(before?.alone, yard.visits),
    visits: stillThere(before?.visits, yard.visits),
    season: before?.season ?? null,
  };
  const shared = groundOf(yard, measured, cache);
  const byId = new Map(yard.visits.map((visit) => [visit.id, visit]));
  const labels = new Map(yard.products.map((product) => [product.id, product]));
  const labelsOf = (visit: Visit) => visit.doses.map((dose) => labels.get(dose.productId));
  /** by visit id, of this very document: needs no look at what it came from. */
  const [aloneNow, heldNow] = [new Map<string, DerivedVisit>(), new Map<string, DerivedVisit>()];

  // what is said of a product that nothing is on hand of hangs on the rest of the shelf
  const hasStock = statesStock(yard);

  const planAlone = (visit: Visit): DerivedVisit => {
    const known = aloneNow.get(visit.id);
    if (known !== undefined) return known;
    const { zones, marks, equipment, settings, soilTests, overrides, rules } = yard;
    const ground = [zones, marks, equipment, settings, soilTests, overrides, rules, measured.plane];
    const from = [visit, ...ground, hasStock];
    const kept = keep(cache.alone.get(visit.id), [...from, ...labelsOf(visit)], () =>
      deriveVisit(visit, shared),
    );
    cache.alone.set(visit.id, kept);
    aloneNow.set(visit.id, kept.value);
    return kept.value;
  };
  const planned: Planned = {
    visit(visitId) {
      const known = heldNow.get(visitId);
      if (known !== undefined) return known;
      const visit = byId.get(visitId);
      if (visit === undefined) return null;
      const own = planAlone(visit);
      const others = visitsHeldWith(yard, visit).map((other) => planAlone(other).figures);
      const from = [own, yard.caps, yard.settings, yard.zones, ...labelsOf(visit), ...others];
      const kept = keep(cache.visits.get(visitId), from, () => {
        const figures = holdVisit(yard, own.figures, others);
        return figures === own.figures ? own : { ...own, figures };
      });
      cache.visits.set(visitId, kept);
      heldNow.set(visitId, kept.value);
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

/** A visit planned by itself. */
function deriveVisit(visit: Visit, ground: Ground): DerivedVisit {
  const { yard, measured, cache } = ground;
  const asked = new Map<string, TreatedZone>();
  const issues: Issue[] = [];
  const zonesByDose = new Map<string, TreatableZone[]>();
  const sigmaByDose = new Map<string, number>();
  const { elevationM } = yard.settings;

  for (const dose of visit.doses) {
    const rows: TreatableZone[] = [];
    const grounds: TreatedZone[] = [];
    for (const zone of visitZones(yard, visit, dose)) {
      const measuredZone = measured.zones.get(zone.id);
      if (measuredZone === undefined) continue;
      const result = ground.treat(zone, measuredZone);
      if (!asked.has(zone.id)) issues.push(...result.issues);
      asked.set(zone.id, result.treated);
      grounds.push(result.treated);
      const { areaM2, stripM2 } = result.treated;
      rows.push({ zoneId: zone.id, name: zone.name, areaM2, stripM2, isPlaced: zone.isPlaced });
    }
    zonesByDose.set(dose.id, rows);
    const key = rows.map((row) => row.zoneId).join(' ');
    const sigma = keep(cache.sigmas.get(key), [elevationM, ...grounds], () =>
      sigmaOfGrounds(grounds, elevationM),
    );
    cache.sigmas.set(key, sigma);
    sigmaByDose.set(dose.id, sigma.value);
  }
  const clashes = clashesOfTreated(yard, ground.clashes(), asked);
  const figures = planVisit({ yard, visit, zonesByDose, sigmaByDose, clashes });
  const goingOut = dosesOn(figures.doses);
  const treated = new Map([...asked].filter(([zoneId]) => goingOut.has(zoneId)));
  const rinse = rinseKept(visit, ground, treated, goingOut);
  return { figures, treated, asked, rinseEdges: rinse, issues };
}

/** What goes out on each zone; doses that cannot go out are none of it. */
function dosesOn(doses: readonly DoseFigures[]): ReadonlyMap<string, readonly DoseFigures[]> {
  const byZone = new Map<string, DoseFigures[]>();
  for (const dose of doses)
    for (const { zoneId } of dose.zones) byZone.set(zoneId, [...(byZone.get(zoneId) ?? []), dose]);
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
  { yard, measured, cache, sources }: Ground,
  zone: Zone,
  measuredZone: MeasuredZone,
): Treated {
  const near = zone.isPlaced ? sourcesNear(sources(), measuredZone.netPlaneParts) : [];
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

/** How far the product of a dose lands beyond an edge, by what puts it out, m. */
function spreadOfDose(yard: Yard, { dose, product }: DoseFigures): number {
  return spreadOf(product, equipmentOfDose(yard, dose, product).equipment, dose.passes.isGuarded);
}

/** Where the walk along the edges begins: at the mark the visit begins at, else at the first hose bib; null: at neither. */
function rinseStart({ yard, measured }: Ground, { startMarkId }: Visit): XY | null {
  const mark =
    yard.marks.find((each) => each.id === startMarkId) ?? yard.marks.find((each) => each.kind === 'hose-bib');
  return mark === undefined ? null : measured.plane.toPlane(mark.position);
}

function rinseKept(
  visit: Visit,
  ground: Ground,
  treated: ReadonlyMap<string, TreatedZone>,
  dosesByZone: ReadonlyMap<string, readonly DoseFigures[]>,
): readonly RinseEdge[] {
  const { yard, measured, cache } = ground;
  const sources = ground.sources();
  const laid = (kind: Zone['kind']) =>
    yard.zones.flatMap((zone) => {
      const own = zone.kind === kind && zone.isPlaced ? measured.zones.get(zone.id) : undefined;
      return own === undefined ? [] : { zone, measured: own };
    });
  const hardscapes = laid('hardscape');
  const structures = laid('structure').map((one) => one.measured);
  const byId = new Map(yard.zones.map((zone) => [zone.id, zone]));
  const grounds = [...dosesByZone].flatMap(([zoneId, doses]): TreatedReach | [] => {
    const [zone, own] = [treated.get(zoneId), byId.get(zoneId)];
    if (zone === undefined || own === undefined || !own.isPlaced) return [];
    return {
      zone,
      spreadM: Math.max(...doses.map((dose) => spreadOfDose(yard, dose))),
      treatment: doses.some(({ product }) => liesLoose(product)) ? 'sweep-then-rinse' : 'rinse-toward-turf',
      stains: doses.some(({ product }) => isStaining(product)),
      fall: { slope: own.slope, downhillDeg: own.downhillDeg },
    };
  });
  const start = rinseStart(ground, visit);
  const { flowLPerS } = yard.settings.hose;
  const from = [
    measured.plane,
    ...sources,
    ...grounds.flatMap((one) => [one.zone, one.spreadM, one.treatment, one.stains]),
    ...grounds.flatMap(({ fall }) => [fall?.slope, fall?.downhillDeg]),
    ...hardscapes.flatMap((hardscape) => [hardscape.zone, hardscape.measured]),
    ...structures,
    ...(start ?? []),
    flowLPerS,
  ];
  const kept = keep(cache.rinse.get(visit.id), from, () =>
    rinseEdges({
      treated: grounds,
      hardscapes,
      structures,
      sources,
      plane: measured.plane,
      from: start,
      flowLPerS,
    }),
  );
  cache.rinse.set(visit.id, kept);
  return kept.value;
}
