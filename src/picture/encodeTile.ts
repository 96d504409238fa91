import type { RawTile } from './tilePyramid';

/** Lossy quality of tiles: differences are not seen beside those of the camera's own JPEG. From memory. */
const QUALITY = 0.9;

/**
 * A tile as a WebP picture; where the browser writes no WebP, JPEG for an opaque tile and PNG for any other.
 * @returns null for a tile without a visible pixel: it is not stored
 * @throws Error when the browser has no memory for it
 */
export async function encodeTile({ widthPx, heightPx, data, isOpaque }: RawTile): Promise<Blob | null> {
  if (!isOpaque && isUnseen(data)) return null;
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { alpha: !isOpaque });
  if (context === null) throw new Error('the browser has no memory for a picture of this size');
  context.putImageData(new ImageData(data, widthPx, heightPx), 0, 0);
  const tile = await canvas.convertToBlob({ type: 'image/webp', quality: QUALITY });
  if (tile.type === 'image/webp' || !isOpaque) return tile;
  return canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
}

function isUnseen(data: Uint8ClampedArray): boolean {
  for (let i = 3; i < data.length; i += 4) if (data[i] !== 0) return false;
  return true;
}
