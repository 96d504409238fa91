import type L from 'leaflet';
import { boxOfTile, type LaidTile } from './pictureView';

/** What the surface shows now: the view's zoom and the place of its upper left. */
export interface Drawn {
  readonly zoom: number;
  readonly origin: L.Point;
  /** px of the map's own plane at its pixel origin. */
  readonly min: L.Point;
  readonly size: L.Point;
  readonly ratio: number;
  readonly corner: L.LatLng;
}

/** Left, top, width and height on the surface, CSS px. */
export type Strip = readonly [number, number, number, number];

/** How far the surface went, when what it holds can be kept; null when it cannot. */
export function movedBy(before: Drawn, next: Drawn): L.Point | null {
  const isSame =
    before.zoom === next.zoom &&
    before.ratio === next.ratio &&
    before.size.equals(next.size) &&
    before.origin.equals(next.origin);
  if (!isSame) return null;
  const by = next.min.subtract(before.min);
  const isWhole = Number.isInteger(by.x * next.ratio) && Number.isInteger(by.y * next.ratio);
  const isNear = Math.abs(by.x) < next.size.x / 2 && Math.abs(by.y) < next.size.y / 2;
  return isWhole && isNear ? by : null;
}

/** What lies bare after the surface went by `by`. */
export function bared(by: L.Point, size: L.Point): Strip[] {
  const strips: Strip[] = [];
  if (by.x !== 0) strips.push([by.x > 0 ? size.x - by.x : 0, 0, Math.abs(by.x), size.y]);
  if (by.y !== 0) strips.push([0, by.y > 0 ? size.y - by.y : 0, size.x, Math.abs(by.y)]);
  return strips;
}

export function touches(tile: LaidTile, [x, y, width, height]: Strip): boolean {
  const [left, top, right, bottom] = boxOfTile(tile);
  return right >= x && bottom >= y && left <= x + width && top <= y + height;
}

/**
 * `tile`: the tile itself. `seam`: its last column and row once more across its edge, so that no ground
 * shines through between neighbours whose common edge runs through pixels of the screen.
 */
export function paintTile(
  pen: CanvasRenderingContext2D,
  bitmap: ImageBitmap,
  { matrix: [a, b, c, d, e, f], widthPx, heightPx }: LaidTile,
  ratio: number,
  part: 'seam' | 'tile',
): void {
  pen.setTransform(a * ratio, b * ratio, c * ratio, d * ratio, e * ratio, f * ratio);
  if (part === 'tile') {
    pen.drawImage(bitmap, 0, 0, widthPx, heightPx);
    return;
  }
  const over = 1 / (Math.sqrt(Math.abs(a * d - b * c)) * ratio);
  pen.drawImage(bitmap, bitmap.width - 1, 0, 1, bitmap.height, widthPx - over, 0, 2 * over, heightPx);
  pen.drawImage(bitmap, 0, bitmap.height - 1, bitmap.width, 1, 0, heightPx - over, widthPx, 2 * over);
}
