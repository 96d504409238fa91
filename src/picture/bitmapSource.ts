import { TILE_PX } from '../survey/picture/types';
import type { RowSource } from './types';

/**
 * The rows of a picture that the browser decodes: turned upright by its Exif record, colours as sRGB. The
 * whole picture is held decoded until `close`.
 * @throws DOMException when the browser cannot decode it, Error when it has no memory for it
 */
export async function openBitmap(file: Blob): Promise<RowSource> {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, Math.min(TILE_PX, height));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('the browser has no memory for a picture of this size');
  return {
    widthPx: width,
    heightPx: height,
    bandRows: TILE_PX,
    async readRows(from, count) {
      context.clearRect(0, 0, width, count);
      context.drawImage(bitmap, 0, from, width, count, 0, 0, width, count);
      return context.getImageData(0, 0, width, count).data;
    },
    close() {
      bitmap.close();
      canvas.width = 0;
    },
  };
}
