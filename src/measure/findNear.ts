import Flatbush from 'flatbush';
import type { Box } from './planeBox';

/**
 * For each box the indices of the others that come within `marginM` of it, ascending; by an R-tree.
 * A box that is inverted (of nothing) is near nothing.
 */
export function findNear(boxes: readonly Box[], marginM: number): number[][] {
  if (boxes.length === 0) return [];
  const index = new Flatbush(boxes.length);
  for (const box of boxes) index.add(box.minX, box.minY, box.maxX, box.maxY);
  index.finish();
  return boxes.map((box, i) =>
    index
      .search(box.minX - marginM, box.minY - marginM, box.maxX + marginM, box.maxY + marginM, (j) => j !== i)
      .sort((a, b) => a - b),
  );
}
