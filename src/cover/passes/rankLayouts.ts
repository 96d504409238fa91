import type { Leg } from '../passTypes';
import { layLegs } from './layLegs';
import { type LaidOutline, type Layout, layOutline } from './layouts';
import { measurePasses, type Reached } from './measurePasses';
import { orderLayout, type Tour } from './orderLayout';
import { outlinesOf } from './outlines';
import type { PreparedZone } from './prepareZone';
import { DOUBLE_PRICE, MOST_DOUBLE, priceOfMissed, priceOfWalk } from './prices';
import type { ZoneGround } from './zoneGround';

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
const MORE_MEASURED = 2;
/** Layouts whose price is guessed to be so many times the best one's are not measured. */
const HOPELESS_SHARE = 1.5;
/** A layout covers that misses no more than this share of the ground. */
const COVERS_SHARE = 0.005;

/** Layouts of a zone that were measured, the best walk first. @param lapsFirst laps are walked before passes */
export function rankLayouts(prepared: PreparedZone, lapsFirst: boolean): RankedLayout[] {
  const { zone, effort, measured } = prepared;
  const { areaM2, walkable, options } = zone;
  const found: RankedLayout[] = [];
  let best: RankedLayout | undefined;
  let count = 0;
  for (const { layout, tour, price: guess } of toursOf(prepared, lapsFirst)) {
    if (best && guess > HOPELESS_SHARE * best.price) break;
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

interface PricedTour {
  readonly layout: Layout;
  readonly tour: Tour;
  readonly price: number;
}

/** Passes may end where the ground of their slab is narrower than this share of it, too: of the best layouts. */
const TRIMS = [0.2, 0.4];
/** So many layouts are trimmed, none of them dearer than the best by more than this. */
const MOST_TRIMMED = 6;
const TRIMMED_SHARE = 1.2;

/** Layouts in the order that is shortest by itself, the most promising first. */
function toursOf(prepared: PreparedZone, lapsFirst: boolean): PricedTour[] {
  const { zone, effort } = prepared;
  const price = (outline: { costM: number; missedM2: number }) =>
    priceOfMissed(outline.costM, outline.missedM2 / zone.areaM2);
  prepared.outlines ??= outlinesOf(zone, effort)
    .sort((a, b) => price(a) - price(b))
    .slice(0, effort.outlines)
    .map((outline) => keepLayouts(layOutline(zone, outline, effort)));
  const whole = prepared.outlines
    .flatMap((outline) =>
      outline.atSides.map((atSides) => ({
        outline,
        atSides,
        ...tourOf(zone, outline.layOut(atSides, 0), lapsFirst),
      })),
    )
    .sort((a, b) => a.price - b.price);
  const most = TRIMMED_SHARE * (whole[0]?.price ?? 0);
  const trimmed = whole
    .filter((each) => each.outline.hasPasses && each.price <= most)
    .slice(0, MOST_TRIMMED)
    .flatMap(({ outline, atSides }) =>
      TRIMS.map((trimShare) => tourOf(zone, outline.layOut(atSides, trimShare), lapsFirst)),
    );
  return [...whole, ...trimmed].sort((a, b) => a.price - b.price);
}

function tourOf({ areaM2, options }: ZoneGround, layout: Layout, lapsFirst: boolean): PricedTour {
  const tour = orderLayout(layout, lapsFirst, null, null);
  const { workingM, missedM2 } = layout;
  // more walk times spacing than ground is done twice; some of it may lie outside
  const twiceM2 = workingM * options.spacingM - (areaM2 - missedM2);
  const double = Math.max(0, twiceM2 / areaM2 - MOST_DOUBLE) / 2;
  const price = priceOfMissed(tour.lengthM, missedM2 / areaM2) + tour.lengthM * DOUBLE_PRICE * double;
  return { layout, tour, price };
}

function keepLayouts(outline: LaidOutline): LaidOutline {
  const kept = new Map<string, Layout>();
  return {
    ...outline,
    layOut(atSides, trimShare) {
      const key = `${atSides} ${trimShare}`;
      const layout = kept.get(key) ?? outline.layOut(atSides, trimShare);
      kept.set(key, layout);
      return layout;
    },
  };
}
