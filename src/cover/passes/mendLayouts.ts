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
import type { Work } from './work';
import type { ZoneGround } from './zoneGround';

/** So many layouts are mended. */
const MOST_MENDED = 4;
/** Shares of the ground, missed or done twice, below which a layout needs no mending. */
const MISSED_FINE = 0.0045;
const DOUBLE_FINE = 0.03;
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
  const hoped = priced.toSorted((a, b) => hopeOf(zone, a) - hopeOf(zone, b)).slice(0, MOST_MENDED);
  const mended = hoped.flatMap((each) => mend(zone, each, lapsFirst, touchUps));
  const all = [...priced, ...mended].sort((a, b) => a.price - b.price);
  const near = all.filter(({ reached }) => isNear(zone, reached.outsideM));
  return near.length > 0 ? near : all;
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
  { missedM2, doubleM2 }: RankedLayout['reached'],
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
  if (at.reached.missedM2 - zone.unreachableM2 > MISSED_FINE * areaM2) {
    const extras = touchUps(worksOf(zone, at.layout), at.layout.headingDeg);
    if (extras.length > 0) take({ ...at.layout, extras: [...(at.layout.extras ?? []), ...extras] }, false);
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
