import { stubsToDrop } from './dropStubs';
import { gapOf } from './frame';
import type { Item } from './items';
import { changeItems, rowsOfItem } from './joinStops';
import { keepNear } from './keepNear';
import { layLegs } from './layLegs';
import type { Layout } from './layouts';
import { measurePasses } from './measurePasses';
import { orderLayout } from './orderLayout';
import { priceOfWalk } from './prices';
import type { RankedLayout } from './rankLayouts';
import { shortenEnds } from './shortenEnds';
import { makeTouchUps } from './touchUps';
import { trimWorks } from './trimWorks';
import { areaOfWork, type Work } from './work';
import type { ZoneGround } from './zoneGround';

/** So many layouts are mended, of ground with so many corners at most. */
const MOST_MENDED: readonly (readonly [number, number])[] = [
  [400, 3],
  [Infinity, 1],
];
/** Shares of the ground, missed or done twice, below which a layout needs no mending. */
const MISSED_FINE = 0.0045;
const DOUBLE_FINE = 0.03;
/** Touch-ups are laid over what is missed, and over what is missed then. */
const TOUCH_UP_ROUNDS = 2;
/** Beyond half a swath by less is not, m. */
const NEAR_M = 0.01;
/** Walk that ground missed is likely to need, over its area / spacing. */
const TOUCH_UP_WALK = 2.5;

/**
 * Layouts made better: passes kept near the ground, touch-ups over what they miss, and without what covers almost
 * nothing new. Each is taken only where the walk's price falls.
 * @param ranked measured layouts
 * @returns them and the better ones, the best first; those that reach too far beyond the ground only where all do
 */
export function mendLayouts(
  zone: ZoneGround,
  ranked: readonly RankedLayout[],
  lapsFirst: boolean,
): RankedLayout[] {
  const touchUps = makeTouchUps(zone);
  const priced = ranked.map((each) => ({
    ...each,
    price: priceOf(
      zone,
      each.legs.reduce((sum, leg) => sum + leg.lengthM, 0),
      each.reached,
    ),
  }));
  const hoped = priced.toSorted((a, b) => hopeOf(zone, a) - hopeOf(zone, b)).slice(0, mostMended(zone));
  const mended: RankedLayout[] = [];
  let leastPrice = Infinity;
  for (const each of hoped) {
    if (hopeOf(zone, each) >= leastPrice) continue;
    for (const made of [each, ...mend(zone, each, lapsFirst, touchUps)]) {
      if (isNear(zone, made.reached.outsideM)) leastPrice = Math.min(leastPrice, made.price);
      if (made !== each) mended.push(made);
    }
  }
  const all = [...priced, ...mended].sort((a, b) => a.price - b.price);
  const near = all.filter(({ reached }) => isNear(zone, reached.outsideM));
  const found = near.length > 0 ? near : all;
  return found
    .map((each, i) => (i < MOST_STUBS ? withoutStubs(zone, each, lapsFirst) : each))
    .sort((a, b) => a.price - b.price);
}

/** The best layouts, so many, are rid of stubs. */
const MOST_STUBS = 3;

/** A layout without very short passes, as far as what it misses stays within the goal. */
function withoutStubs(zone: ZoneGround, ranked: RankedLayout, lapsFirst: boolean): RankedLayout {
  const { layout, reached } = ranked;
  const own = worksOf(zone, layout);
  const dropped = stubsToDrop(zone, own, Math.max(0, reached.missedM2 - zone.unreachableM2));
  if (dropped.size === 0) return ranked;
  const gone = new Set(rawWorksOf(layout).filter((_, i) => dropped.has(own[i] as Work)));
  const next = measured(
    zone,
    changed(layout, (work) => (gone.has(work) ? [] : [work])),
    lapsFirst,
  );
  return next.legs.length > 0 && next.price < ranked.price ? next : ranked;
}

function mostMended({ rings }: ZoneGround): number {
  const corners = rings.reduce((sum, ring) => sum + ring.length - 1, 0);
  return MOST_MENDED.find(([most]) => corners <= most)?.[1] ?? 1;
}

const isNear = ({ options }: ZoneGround, outsideM: number): boolean =>
  outsideM <= options.swathM / 2 + NEAR_M;

/** Price that a layout may have when it is mended, m. */
function hopeOf({ areaM2, options }: ZoneGround, { legs, reached }: RankedLayout): number {
  const lengthM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const walkM = lengthM + (TOUCH_UP_WALK * reached.missedM2) / options.spacingM;
  return priceOfWalk(walkM, 0, reached.doubleM2 / areaM2);
}

/** Price of a walk, what cannot be reached left aside, m. */
function priceOf(
  { areaM2, unreachableM2 }: ZoneGround,
  lengthM: number,
  { missedM2, doubleM2 }: Pick<RankedLayout['reached'], 'missedM2' | 'doubleM2'>,
): number {
  return priceOfWalk(lengthM, Math.max(0, missedM2 - unreachableM2) / areaM2, doubleM2 / areaM2);
}

function mend(
  zone: ZoneGround,
  start: RankedLayout,
  lapsFirst: boolean,
  touchUps: ReturnType<typeof makeTouchUps>,
): RankedLayout[] {
  const { areaM2, options, walkable } = zone;
  const made: RankedLayout[] = [];
  let at = start;
  const take = (layout: Layout, isForced: boolean) => {
    const next = measured(zone, layout, lapsFirst);
    if (!isForced && next.price >= at.price) return;
    made.push(next);
    at = next;
  };
  if (!isNear(zone, at.reached.outsideM))
    take(
      changed(at.layout, (work) =>
        work.kind === 'pass' ? keepNear(walked(zone, work), walkable, options.swathM) : [work],
      ),
      true,
    );
  for (let round = 0; round < TOUCH_UP_ROUNDS; round++) {
    const before = at;
    if (at.reached.missedM2 - zone.unreachableM2 <= MISSED_FINE * areaM2) break;
    const extras = touchUps(worksOf(zone, at.layout), at.layout.headingDeg);
    if (extras.length > 0) {
      const layout = { ...at.layout, extras: [...(at.layout.extras ?? []), ...extras] };
      take(withoutFar(zone, layout, measured(zone, layout, lapsFirst), lapsFirst), false);
    }
    if (at === before) break;
  }
  if (at.reached.doubleM2 > DOUBLE_FINE * areaM2) {
    const own = worksOf(zone, at.layout);
    const cut = trimWorks(zone, own, Math.max(0, at.reached.missedM2 - zone.unreachableM2));
    const whole = rawWorksOf(at.layout);
    const become = new Map(whole.map((work, i) => [work, cut.get(own[i] as Work) ?? [work]]));
    if (cut.size > 0)
      take(
        changed(at.layout, (work) => become.get(work) ?? [work]),
        false,
      );
  }
  return made;
}

/** A layout without those touch-ups whose way is worth more than their ground. */
function withoutFar(
  zone: ZoneGround,
  layout: Layout,
  { legs, reached }: RankedLayout,
  lapsFirst: boolean,
): Layout {
  const { stops } = orderLayout(layout, lapsFirst, null, null);
  const costs = new Map<Work, number>();
  for (const [i, { item, choice }] of stops.entries()) {
    const [before, after] = [stops[i - 1]?.choice.end, stops[i + 1]?.choice.start];
    const costM =
      gapOf(before, choice.start) + choice.lengthM + gapOf(choice.end, after) - gapOf(before, after);
    const work = item.choices[0]?.rows()[0]?.[0];
    if (work) costs.set(work, costM);
  }
  let lengthM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const { doubleM2 } = reached;
  let { missedM2 } = reached;
  const worthOf = (work: Work) => areaOfWork(work) / (costs.get(work) ?? 1);
  const gone = new Set<Work>();
  for (const work of (layout.extras ?? []).toSorted((a, b) => worthOf(a) - worthOf(b))) {
    const [lessM, moreM2] = [lengthM - (costs.get(work) ?? 0), missedM2 + areaOfWork(work)];
    if (
      priceOf(zone, lessM, { doubleM2, missedM2: moreM2 }) >= priceOf(zone, lengthM, { doubleM2, missedM2 })
    )
      continue;
    gone.add(work);
    [lengthM, missedM2] = [lessM, moreM2];
  }
  return { ...layout, extras: (layout.extras ?? []).filter((work) => !gone.has(work)) };
}

/** A pass as it is walked. */
function walked({ walkable, options }: ZoneGround, work: Work): Work {
  return work.kind === 'pass' ? shortenEnds(work, walkable, options.swathM) : work;
}

const rawWorksOf = ({ laps, passes, extras }: Layout): Work[] => [
  ...[...laps, ...passes].flatMap((item: Item) => rowsOfItem(item).flat()),
  ...(extras ?? []),
];

const worksOf = (zone: ZoneGround, layout: Layout): Work[] =>
  rawWorksOf(layout).map((work) => walked(zone, work));

function changed(layout: Layout, change: (work: Work) => readonly Work[]): Layout {
  const passes = changeItems(layout.passes, change);
  const extras = (layout.extras ?? []).flatMap(change);
  return { ...layout, passes, extras };
}

function measured(zone: ZoneGround, layout: Layout, lapsFirst: boolean): RankedLayout {
  const { walkable, options } = zone;
  const legs = layLegs(orderLayout(layout, lapsFirst, null, null).stops, walkable, options);
  const reached = measurePasses(legs, zone.parts, walkable, options.spacingM, options.swathM);
  const lengthM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
  const price = priceOf(zone, lengthM, reached);
  return { layout, reached, legs, price };
}
