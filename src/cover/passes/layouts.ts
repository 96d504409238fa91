import type { XY } from '../../measure/types';
import { cellsOf, hasLevels } from './cells';
import type { Effort } from './effort';
import { distanceOf, frameOf, orientedRings } from './frame';
import { type Item, itemOfCell, itemOfLap, itemOfWork } from './items';
import { pushCorners } from './lapCorners';
import { ARC_M } from './laps';
import type { Outline } from './outlines';
import { endOf, startOf, type Work } from './work';
import type { ZoneGround } from './zoneGround';

/** A way of laying a zone out: all that is walked, in no order yet. */
export interface Layout {
  readonly headingDeg: number | null;
  readonly cells: number;
  readonly laps: readonly Item[];
  /** straight passes and those along the middle of narrow ground. */
  readonly passes: readonly Item[];
  /** short passes over what the others miss, walked wherever they are nearest; absent: none. */
  readonly extras?: readonly Work[];
  /** laps and passes alone, m. */
  readonly workingM: number;
  /** ground known to be missed, m². */
  readonly missedM2: number;
}

/** An outline made ready for laying passes in it. */
export interface LaidOutline {
  /** false: straight passes in slabs of one width; true, where that differs: in slabs that begin at long sides. */
  readonly atSides: readonly boolean[];
  /** @param trimShare passes may end where the ground of their slab is narrower than this share of it */
  layOut(atSides: boolean, trimShare: number): Layout;
  /** whether trimming changes anything. */
  readonly hasPasses: boolean;
}

/** The layouts of an outline: its laps, and what they leave in straight passes. */
export function layOutline(zone: ZoneGround, outline: Outline, effort: Effort): LaidOutline {
  const { options, keepOff, rings } = zone;
  const { heading, need, push, middles } = outline;
  // beside ground to be kept off no lap leaves its line
  const mayPush = (corner: XY, withinM: number) =>
    !zone.shy || (zone.shy.nearest(corner)?.distanceM ?? Infinity) > options.swathM / 2 + ARC_M + withinM;
  const pushed = push
    ? outline.laps.map((lap) => (isOpen(lap) ? lap : pushCorners(lap, push.share, push.spacingM, mayPush)))
    : outline.laps;
  const laps = pushed.map((lap) =>
    isOpen(lap) ? itemOfWork(lap) : itemOfLap(lap, pushed.length > 12 ? 6 : effort.lapStarts),
  );
  const middleItems = middles.map(itemOfWork);
  const finish = (passes: readonly Item[], cells: number, missedM2: number): Layout => ({
    headingDeg: heading?.degrees ?? null,
    cells,
    laps,
    passes,
    workingM: [...laps, ...passes].reduce((sum, item) => sum + item.workingM, 0),
    missedM2: outline.missedM2 + missedM2,
  });
  const frame = frameOf(heading?.degrees ?? 0);
  const isLevelled = heading !== null && need.some((piece) => hasLevels(piece, frame, options.spacingM));
  return {
    atSides: isLevelled ? [false, true] : [false],
    hasPasses: heading !== null,
    layOut(atSides, trimShare) {
      if (heading === null) return finish(middleItems, middles.length, 0);
      const ground = { need, zone: rings, keepOff: orientedRings(keepOff), ...options, trimShare, atSides };
      const cells = cellsOf(ground, frame, options.spacingM);
      const missedM2 = cells.reduce((sum, cell) => sum + cell.missedM2, 0);
      return finish([...cells.map(itemOfCell), ...middleItems], cells.length + middles.length, missedM2);
    },
  };
}

const isOpen = (lap: Work): boolean => distanceOf(startOf(lap), endOf(lap)) > 1e-6;
