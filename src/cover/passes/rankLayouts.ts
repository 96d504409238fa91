import type { Leg } from '../passTypes';
import { layLegs } from './layLegs';
import { type Layout, layOut } from './layouts';
import { measurePasses, type Reached } from './measurePasses';
import { orderLayout, type Tour } from './orderLayout';
import { outlinesOf } from './outlines';
import type { PreparedZone } from './prepareZone';
import { DOUBLE_PRICE, MOST_DOUBLE, priceOfMissed, priceOfWalk } from './prices';

/** A layout with what it covers, which hangs on neither order nor direction of its passes. */
export interface RankedLayout {
  readonly layout: Layout;
  readonly reached: Reached;
  /** its legs in the order that is shortest by itself. */
  readonly legs: readonly Leg[];
  /** price of that walk, as m. */
  readonly price: number;
}

/** So many times as many layouts are measured while none covers. */
const MORE_MEASURED = 4;
/** A layout covers that misses no more than this share of the ground. */
const COVERS_SHARE = 0.005;

/** Layouts of a zone that were measured, the best walk first. @param lapsFirst laps are walked before passes */
export function rankLayouts(prepared: PreparedZone, lapsFirst: boolean): RankedLayout[] {
  const { zone, effort, measured } = prepared;
  const { areaM2, walkable, options } = zone;
  const found: RankedLayout[] = [];
  let best: RankedLayout | undefined;
  let count = 0;
  for (const { layout, tour } of toursOf(prepared, lapsFirst)) {
    // straight ways are the shortest: it cannot become better
    if (best && tour.lengthM >= best.price) continue;
    // on until one covers, within bounds
    const isShort = best !== undefined && best.reached.missedM2 > COVERS_SHARE * areaM2;
    if (count++ >= (isShort ? MORE_MEASURED : 1) * effort.measured) break;
    const legs = layLegs(tour.stops, walkable, options);
    const reached =
      measured.get(layout) ?? measurePasses(legs, zone.parts, walkable, options.spacingM, options.swathM);
    measured.set(layout, reached);
    const lengthM = legs.reduce((sum, leg) => sum + leg.lengthM, 0);
    const price = priceOfWalk(lengthM, reached.missedM2 / areaM2, reached.doubleM2 / areaM2);
    const ranked = { layout, reached, legs, price };
    found.push(ranked);
    if (!best || price < best.price) best = ranked;
  }
  return found.sort((a, b) => a.price - b.price);
}

/** Layouts in the order that is shortest by itself, the most promising first. */
function toursOf(prepared: PreparedZone, lapsFirst: boolean): { layout: Layout; tour: Tour }[] {
  const { areaM2, options } = prepared.zone;
  return layoutsOf(prepared)
    .map((layout) => {
      const tour = orderLayout(layout, lapsFirst, null, null);
      const { workingM, missedM2 } = layout;
      // more walk times spacing than ground is done twice; some of it may lie outside
      const twiceM2 = workingM * options.spacingM - (areaM2 - missedM2);
      const double = Math.max(0, twiceM2 / areaM2 - MOST_DOUBLE) / 2;
      const price = priceOfMissed(tour.lengthM, missedM2 / areaM2) + tour.lengthM * DOUBLE_PRICE * double;
      return { layout, tour, price };
    })
    .sort((a, b) => a.price - b.price);
}

/** The layouts of the most promising outlines. */
function layoutsOf({ zone, effort, layouts }: PreparedZone): readonly Layout[] {
  if (layouts.length === 0) {
    const price = (outline: { costM: number; missedM2: number }) =>
      priceOfMissed(outline.costM, outline.missedM2 / zone.areaM2);
    const outlines = outlinesOf(zone, effort).sort((a, b) => price(a) - price(b));
    for (const outline of outlines.slice(0, effort.outlines)) layouts.push(...layOut(zone, outline, effort));
  }
  return layouts;
}
