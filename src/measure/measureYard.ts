import { type Yard, ZONE_KINDS, type Zone } from '../yard/types';
import { areaScale } from './areaScale';
import { findNear } from './findNear';
import { type LaidZone, netShapeOf } from './netShape';
import { createPlane } from './plane';
import { boxesNear } from './planeBox';
import { planeFor } from './planeFor';
import { layZone } from './planeZone';
import { totalsByKind } from './totals';
import type { LocalPlane, MeasuredYard, MeasuredZone } from './types';
import { gradientOfParts, keepSources, ownSigmaOfParts, ownSigmaOfWhole } from './uncertainty';

/** Zones whose boxes come this near may share a border, m. */
const TOUCH_M = 1e-4;

/** A zone near another, of those that decide its net shape and whose corners hold a shared border. */
interface Elder extends LaidZone {
  readonly isCutter: boolean;
  /** comes before the other in the one order of all zones: by kind, then by list. */
  readonly isBefore: boolean;
}

/** What a measured zone came from: it is good while these are the same objects. */
interface Origin {
  readonly zone: Zone;
  readonly elders: readonly Elder[];
  readonly plane: LocalPlane;
  readonly elevationM: number | null;
}
const origins = new WeakMap<MeasuredZone, Origin>();

/** The plane of zones without a place; their degrees lie round [0, 0]. */
export const NOWHERE: LocalPlane = createPlane([0, 0]);
const NO_ELDERS: readonly Elder[] = [];

/**
 * Gross and net area of every zone with its error, and the totals by kind.
 *
 * Kinds cut each other in the order of ZONE_KINDS; a zone that says `cutsSameKind` also cuts those of
 * its kind drawn before it. Areas are geodesic on WGS 84, times (1 + h/R)² where the yard has an
 * elevation h. A zone whose outline crosses itself or has too few corners is left out and listed in
 * `issues` as an error: it neither counts nor cuts. Parts that overlap, and holes that reach outside,
 * are measured with each square metre counted once and listed as a warning. A zone without a place is
 * measured by itself, in the plane NOWHERE. Errors and totals are worked out when first asked for: a drag
 * asks for areas at every frame and for the rest a few times a second. Never throws.
 * @param previous the last result; zones whose inputs are the same objects are taken over from it
 */
export function measureYard(yard: Yard, previous?: MeasuredYard): MeasuredYard {
  const plane = planeFor(yard, previous);
  const all = yard.zones.map(
    (zone): LaidZone => ({ zone, laid: layZone(zone, zone.isPlaced ? plane : NOWHERE) }),
  );
  const usable = all.filter(({ laid }) => laid.isSound);
  const { elevationM } = yard.settings;
  const zones = new Map<string, MeasuredZone>();
  const elders = eldersOf(usable.filter(({ zone }) => zone.isPlaced));
  let placed = 0;
  for (const subject of usable) {
    const { zone, laid } = subject;
    const before = previous?.zones.get(zone.id);
    const near = zone.isPlaced ? elders[placed++] : NO_ELDERS;
    const origin: Origin = { zone, elders: near ?? NO_ELDERS, plane: laid.plane, elevationM };
    zones.set(zone.id, before && isSame(origins.get(before), origin) ? before : measureZone(subject, origin));
  }
  let totals: MeasuredYard['totals'] | undefined;
  const measured: MeasuredYard = {
    plane,
    zones,
    get totals() {
      totals ??= totalsByKind(
        usable.map(({ zone }) => zone),
        zones,
        plane,
        areaScale(elevationM),
        summed.get(measured),
      );
      summed.set(measured, measured);
      return totals;
    },
    issues: all.flatMap(({ laid }) => laid.issues),
  };
  const before = previous && summed.get(previous);
  if (before) summed.set(measured, before);
  return measured;
}

/** The last result before this one whose totals were asked for, or itself: what changed since is summed anew. */
const summed = new WeakMap<MeasuredYard, MeasuredYard>();

function measureZone({ zone, laid }: LaidZone, origin: Origin): MeasuredZone {
  const { plane, elders } = origin;
  const scale = areaScale(origin.elevationM);
  const shape = netShapeOf(
    { zone, laid },
    elders.filter((elder) => elder.isCutter),
  );
  const sources = [
    ...elders.filter((elder) => elder.isBefore).map((elder) => elder.zone),
    zone,
    ...elders.filter((elder) => !elder.isBefore).map((elder) => elder.zone),
  ];
  let gradient: MeasuredZone['gradient'] | undefined;
  let ownSigmaM2: number | undefined;
  const linear = Math.sqrt(scale);
  const measured: MeasuredZone = {
    zoneId: zone.id,
    grossM2: scale * shape.grossM2,
    netM2: scale * shape.netM2,
    get netSigmaM2() {
      ownSigmaM2 ??=
        shape.cutBy.length === 0
          ? ownSigmaOfWhole(shape.planeParts, zone, plane)
          : ownSigmaOfParts(shape.planeParts, zone, sources, plane);
      return linear * ownSigmaM2;
    },
    netPerimeterM: linear * shape.perimeterM,
    netParts: shape.parts,
    netPlaneParts: shape.planeParts,
    cutBy: shape.cutBy.map((one) => ({ ...one, areaM2: scale * one.areaM2 })),
    get gradient() {
      gradient ??= gradientOfParts(shape.planeParts, sources, plane, zone);
      return gradient;
    },
  };
  origins.set(measured, origin);
  keepSources(measured, sources, linear);
  return measured;
}

/**
 * For each zone the near ones that come before it: of a kind that cuts its kind, of its own kind and
 * earlier in the list, or cutting their own kind; in the order in which they cut (kind, then list).
 */
function eldersOf(all: readonly LaidZone[]): Elder[][] {
  const count = all.length;
  const order = all.map(({ zone }, i) => ZONE_KINDS.indexOf(zone.kind) * count + i);
  const near = findNear(
    all.map(({ laid }) => laid.box),
    TOUCH_M,
  );
  return all.map((subject, i) => {
    const own = order[i] ?? 0;
    const elders: Elder[] = [];
    for (const place of (near[i] ?? []).map((j) => order[j] ?? 0).sort((a, b) => a - b)) {
      const other = all[place % count];
      if (!other) continue;
      const isBefore = place < own;
      const isSameKind = other.zone.kind === subject.zone.kind;
      const mayCut = isSameKind ? !isBefore && other.zone.cutsSameKind : isBefore;
      const isCutter = mayCut && boxesNear(subject.laid.box, other.laid.box, 0);
      if (isBefore || isCutter) elders.push({ zone: other.zone, laid: other.laid, isCutter, isBefore });
    }
    return elders;
  });
}

function isSame(a: Origin | undefined, b: Origin): boolean {
  return (
    a !== undefined &&
    a.zone === b.zone &&
    a.plane === b.plane &&
    a.elevationM === b.elevationM &&
    a.elders.length === b.elders.length &&
    a.elders.every((elder, i) => {
      const other = b.elders[i];
      return (
        elder.zone === other?.zone && elder.isCutter === other.isCutter && elder.isBefore === other.isBefore
      );
    })
  );
}
