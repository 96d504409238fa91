import { cellsOf, hasLevels } from './cells';
import type { Effort } from './effort';
import { distanceOf, frameOf, orientedRings } from './frame';
import { type Item, itemOfCell, itemOfLap, itemOfWork } from './items';
import { pushCorners } from './lapCorners';
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

/** Passes may end where the ground of their slab is narrower than this share of it. */
const TRIMS = [0, 0.2, 0.4];

/** The layouts of an outline: its laps, and what they leave in straight passes. */
export function layOut(zone: ZoneGround, outline: Outline, effort: Effort): Layout[] {
  const { options, keepOff, rings } = zone;
  const { heading, need, push, middles } = outline;
  const pushed = push ? outline.laps.map((lap) => pushCorners(lap, push.share, push.spacingM)) : outline.laps;
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
  if (heading === null) return [finish(middleItems, middles.length, 0)];
  const frame = frameOf(heading.degrees);
  const levels = need.some((piece) => hasLevels(piece, frame, options.spacingM)) ? [false, true] : [false];
  return levels.flatMap((atSides) =>
    TRIMS.map((trimShare) => {
      const ground = { need, zone: rings, keepOff: orientedRings(keepOff), ...options, trimShare, atSides };
      const cells = cellsOf(ground, frame, options.spacingM);
      const missedM2 = cells.reduce((sum, cell) => sum + cell.missedM2, 0);
      return finish([...cells.map(itemOfCell), ...middleItems], cells.length + middles.length, missedM2);
    }),
  );
}

const isOpen = (lap: Work): boolean => distanceOf(startOf(lap), endOf(lap)) > 1e-6;
